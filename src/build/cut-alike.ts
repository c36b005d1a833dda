import type { PlannedNode } from '../breakdown/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import { leftWords } from './after-cut.ts';
import type { Bench } from './bench.ts';
import { markWords } from './mark-words.ts';
import type { Yield } from './operation.ts';
import { cut, cutCaution, stripSaw, TAPE_CUT } from './saw-cut.ts';
import { BY_HAND } from './too-small.ts';

/** A cut across a strip that takes a part off its end. */
export interface StripCut {
  readonly strip: string;
  readonly uncut: boolean;
  readonly of: { readonly length: Traced; readonly width: Traced };
  readonly at: Traced;
  readonly part: Part;
  readonly turned: boolean;
  /** What stays: the strip itself for more cuts, a part, or what goes back on the rack. Else it is waste. */
  readonly stays?: {
    readonly name: string;
    readonly as: 'strip' | 'left' | Extract<PlannedNode, { kind: 'piece' }>;
  };
  readonly tape: boolean;
  readonly byHand: boolean;
}

type Cuts = readonly [StripCut, ...StripCut[]];

/** Cuts that are made at one setting, on one card; of a single one its two marks are told in full. */
export function cutAlike(bench: Bench, cuts: Cuts): void {
  if (cuts.length === 1) return cutOne(bench, cuts[0]);
  const [{ at, tape, byHand, part }] = cuts;
  const saw = stripSaw(bench, at);
  const marks = cuts.map((c) => c.part.mark);
  const uncut = cuts.flatMap((c) => (c.uncut ? [c.strip] : []));
  const id = `${part.mark}/crosscut-alike`;
  bench.do(
    {
      id,
      kind: 'crosscut',
      stage: 'strips',
      title: `${tape ? 'Cut' : 'Crosscut'} ${markWords(marks)} to one length`,
      does: {
        act: 'saw-alike',
        cuts: cuts.map((c) => ({ workpiece: c.strip, yields: yieldsOf(c) })),
        at,
        ...(tape ? { knife: true as const } : {}),
      },
      ...(tape || byHand ? {} : { tool: saw }),
      reference: 'the squared end',
      // A stop saves the marking, which is half of a cut: our own choice.
      times: (1 + cuts.length) / 2,
      lines: [
        ...(tape || uncut.length === 0 ? [] : [endsLine(uncut)]),
        ...settingLines(saw, { tape, byHand }),
        `${fromWhere(cuts)}. Write its mark on each as it comes off, and lay it by.`,
        ...whatStays(cuts),
      ],
      lengths: [at],
      cautions: [cutCaution(saw, { tape, byHand })],
    },
    [...new Set(cuts.map((c) => c.strip))],
  );
  for (const c of cuts) for (const y of yieldsOf(c)) if (y) bench.comesFrom(y.name, id);
}

function cutOne(bench: Bench, c: StripCut): void {
  const { strip, part, stays } = c;
  const by = [part.mark, ...(typeof stays?.as === 'object' ? [stays.name] : [])].join(' and ');
  const rest =
    stays === undefined || stays.as === 'left'
      ? leftWords(stays?.name)
      : `, ${typeof stays.as === 'object' ? named(stays.as.part) : strip} on what stays.`;
  cut(bench, {
    id: `${strip}/crosscut-${part.mark}`,
    title: `${c.tape ? 'Cut' : 'Crosscut'} ${part.mark} off strip ${strip}`,
    kind: 'crosscut',
    workpiece: strip,
    of: c.of,
    across: 'length',
    at: c.at,
    keep: 'before',
    yields: yieldsOf(c),
    tape: c.tape,
    uncut: c.uncut,
    extra: `Write ${named(part)} on what comes off${rest} Then lay ${by} by${stays?.as === 'strip' ? `, keep ${strip} for its cuts` : ''}.`,
  });
}

function named({ mark, name }: Part): string {
  return `${mark} (${name})`;
}

function yieldsOf({ part, turned, stays }: StripCut): readonly [Yield, Yield | undefined] {
  return [
    { name: part.mark, turned },
    stays && { name: stays.name, turned: typeof stays.as === 'object' && stays.as.turned },
  ];
}

function endsLine(strips: readonly string[]): string {
  return `Check ${strips.length > 1 ? 'the ends' : 'the end'} of ${markWords(strips)} with the square, and saw ${strips.length > 1 ? 'each' : 'it'} square first where it isn’t; of what stays after a cut, the fresh end is the squared one.`;
}

function settingLines(
  saw: 'mitre-saw' | 'circular-saw',
  { tape, byHand }: { readonly tape: boolean; readonly byHand: boolean },
): readonly string[] {
  if (tape) return ['Mark {0} from the squared end, each in turn, and square the line across.', TAPE_CUT];
  if (byHand) return ['Mark {0} from the squared end, each in turn, and square the line round.', ...BY_HAND];
  return [
    saw === 'mitre-saw'
      ? 'Clamp a stop to the fence, {0} from the blade, on a board that lengthens the fence where it is too short. The squared end against it, blade down slowly; let it stop before it comes up.'
      : 'Set a stop {0} from the cut, on the board that carries the mitre box or that the strip is clamped beside. The squared end against it, cut with a fine handsaw in the mitre box, or with the saw, the strip clamped down beside a board of its own thickness.',
    'Measure the first before the others follow.',
  ];
}

/** `From L5 come J16 and J17; from L6 J26`. */
function fromWhere(cuts: Cuts): string {
  const strips = [...new Set(cuts.map((c) => c.strip))];
  const told = strips.map((strip, i) => {
    const marks = cuts.filter((c) => c.strip === strip).map((c) => c.part.mark);
    return `from ${strip} ${i > 0 ? '' : marks.length > 1 ? 'come ' : 'comes '}${markWords(marks)}`;
  });
  return `F${told.join('; ').slice(1)}`;
}

/** Where the rest of each strip goes after its last cut here. */
function whatStays(cuts: Cuts): readonly string[] {
  const last = [...new Map(cuts.map((c) => [c.strip, c])).values()];
  const kept = last.filter((c) => c.stays?.as === 'strip').map((c) => c.strip);
  const waste = last.filter((c) => !c.stays).map((c) => c.strip);
  const others = last.flatMap(({ strip, stays }) =>
    typeof stays?.as === 'object'
      ? [`What stays of ${strip} is ${stays.name}: write it on, and lay it by.`]
      : stays?.as === 'left'
        ? [`What stays of ${strip} goes back on the rack: write ${stays.name} on it.`]
        : [],
  );
  return [
    ...(kept.length > 0
      ? [`Keep ${markWords(kept)} for ${kept.length > 1 ? 'their' : 'its'} next cuts.`]
      : []),
    ...(waste.length > 0 ? [`What stays of ${markWords(waste)} is waste.`] : []),
    ...others,
  ];
}
