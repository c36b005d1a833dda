import { SETTING_OUT } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { linesOfHoles, markLine } from './hole-places.ts';
import { capital, listWords, measuredFrom, referenceFor, sideWords } from './words.ts';

/** Twist drills are sold up to about this width, mm (common practice); wider holes are bored with a Forstner bit. */
const TWIST_MOST = 13;

/** A row of holes that the maker asked for, all of one width and depth: for pegs, hooks or what else goes in; or holes for the sleeves of levellers. */
export function rowHoles(bench: Bench, batch: readonly [Part, ...Part[]], row: readonly Hole[]): void {
  const [part] = batch;
  const first = row[0]!;
  const l = bench.ledger;
  const face = first.side as 'show' | 'under';
  const marks = batch.map((p) => p.mark);
  const ref = referenceFor(part, 'near');
  const side = referenceFor(part, 'start');
  const middle = runsHalved(part, first);
  const placed = distinct(
    bench,
    row.map((h) => {
      const along = middle.includes('length')
        ? offMiddle(bench, part.length, h.at[0])
        : ref.turned
          ? l.less('the same from the other end', part.length, h.at[0])
          : h.at[0];
      const across = middle.includes('width')
        ? offMiddle(bench, part.width, h.at[1])
        : side.turned
          ? l.less('the same from the other edge', part.width, h.at[1])
          : h.at[1];
      return { along: bench.set('marking', along), across: bench.set('marking', across) };
    }),
  );
  const onMiddle = (run: 'length' | 'width', t: Traced) =>
    middle.includes(run) && l.ticks(t) === 0 ? 'middle' : t;
  const depth =
    first.depth === undefined
      ? undefined
      : bench.set('drill', first.depth, first.use === 'leveller' ? 'up' : 'down');
  const bit = bitFor(bench, first);
  const lengths: Traced[] = [first.diameter, ...(depth === undefined ? [] : [depth])];
  const end = measuredFrom(part, ref.from, face);
  const lines = linesOfHoles(bench, placed).map(({ across, along }) => {
    const print = (all: readonly Traced[]) => listWords(all.map((t) => `{${lengths.push(t) - 1}}`));
    const line = middle.includes('width')
      ? capital(aboutMiddle(bench, across, print))
      : `${print(across)} from the ${sideWords(part, side.from)}`;
    const places = middle.includes('length')
      ? aboutMiddle(bench, along, print)
      : `at ${print(along)} from ${end}`;
    return `${line}: ${across.length > 1 || (middle.includes('width') && l.ticks(across[0]!) > 0) ? 'on each line ' : ''}${places}.`;
  });
  const purposes = [...new Set(row.map((h) => h.purpose))].join('; ');
  bench.settings.push({
    id: `${part.mark}/drill-${face}-${first.use}-${l.ticks(first.diameter)}${depth === undefined ? '' : `-${l.ticks(depth)}`}${middle.map((run) => `-mid-${run}`).join('')}`,
    kind: 'drill',
    what: `${row.length > 1 ? 'Holes' : 'Hole'} ${depth === undefined ? 'through' : `in the ${sideWords(part, face)} of`}`,
    parts: batch,
    purpose: purposes,
    does: {
      act: 'drill',
      workpieces: marks,
      side: face,
      from: ref.from,
      ...(side.turned ? { acrossFrom: 'far' as const } : {}),
      at: placed.map((p) => [onMiddle('length', p.along), onMiddle('width', p.across)] as const),
      ...(middle.length > 0 ? { middle } : {}),
      diameter: first.diameter,
      ...(depth === undefined ? {} : { depth }),
      ...(bit === 'twist' ? {} : { bit }),
      // A sleeve fills its hole.
      ...(first.use === 'row' ? { open: true } : {}),
    },
    tool: 'drill',
    times: row.length,
    faceUp: `${sideWords(part, face)} up${depth === undefined ? ', a waste board clamped tight under it' : ''}`,
    reference: `${end} and the ${sideWords(part, side.from)}`,
    lines: [
      ...middle.map((run) => findMiddle(part, run)),
      markLine(row.length),
      ...lines,
      HOW[bit](depth !== undefined),
      ...(first.use === 'row' && bit !== 'twist' ? [rimLine(depth !== undefined)] : []),
    ],
    lengths,
    cautions: [CAUTION.drill],
  });
}

/** Fingers and cords go through wide holes. */
function rimLine(blind: boolean): string {
  return blind
    ? 'Ease the rim with sandpaper round a dowel.'
    : 'Round both rims well over with a half-round file, and sand them round a dowel: fingers and cords go through, and an arris cuts.';
}

/**
 * The measures that a row is marked half way along. An end whose mitre falls away from the face that is marked is no
 * place to measure from, so there it is measured from the other one.
 */
function runsHalved(part: Part, hole: Hole): readonly ('length' | 'width')[] {
  const mitred = part.features.some((f) => f.kind === 'bevel');
  return (hole.middle ?? []).filter((run) => run === 'width' || !mitred);
}

function offMiddle(bench: Bench, whole: Traced, at: Traced): Traced {
  const l = bench.ledger;
  const half = l.ratio('half way', whole, SETTING_OUT.half);
  return l.ticks(at) < l.ticks(half)
    ? l.less('from the middle', half, at)
    : l.less('from the middle', at, half);
}

/** Each place once: two holes of a row are as far from its middle. */
function distinct<P extends { readonly along: Traced; readonly across: Traced }>(
  bench: Bench,
  all: readonly P[],
): readonly P[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  return [...new Map(all.map((p) => [`${t(p.along)} ${t(p.across)}`, p])).values()];
}

/** How a middle is found without a sum: what is marked from both sides is as far off it, whatever the true size came to. */
function findMiddle(part: Part, run: 'length' | 'width'): string {
  const { from } = referenceFor(part, run === 'length' ? 'near' : 'start');
  const to = OTHER[from];
  return `Find the middle between the ${sideWords(part, from)} and the ${sideWords(part, to)}: mark the same distance from both, a little less than half, and halve what lies between the two marks.`;
}

const OTHER = { start: 'end', end: 'start', near: 'far', far: 'near' } as const;

/** Where holes are from a middle: on it, and so far to each side. */
function aboutMiddle(
  bench: Bench,
  off: readonly Traced[],
  print: (all: readonly Traced[]) => string,
): string {
  const beside = off.filter((t) => bench.ledger.ticks(t) > 0);
  const on = beside.length < off.length ? ['on the middle'] : [];
  return [
    ...on,
    ...(beside.length > 0 ? [`${print(beside)} to each side of ${on.length > 0 ? 'it' : 'the middle'}`] : []),
  ].join(' and ');
}

type RowBit = 'twist' | 'forstner' | 'hole-saw';

/** A bit of the rack of just that width, or the kind that such a hole is bored with; no saw leaves a floor. */
function bitFor(bench: Bench, hole: Hole): RowBit {
  const width = bench.ledger.ticks(hole.diameter);
  const kinds: readonly RowBit[] =
    hole.depth === undefined ? ['twist', 'forstner', 'hole-saw'] : ['twist', 'forstner'];
  const owned = kinds.find((k) =>
    bench.job.shop.rack.bits.some((b) => b.kind === k && bench.ticksOf(b.diameter) === width),
  );
  return owned ?? (toMm(width) <= TWIST_MOST ? 'twist' : 'forstner');
}

const HOW: Readonly<Record<RowBit, (blind: boolean) => string>> = {
  twist: (blind) =>
    blind
      ? 'Drill {0}, {1} deep and no deeper: a flag of tape on the bit shows it.'
      : 'Drill {0} right through into the waste board.',
  forstner: (blind) =>
    blind
      ? 'Forstner bit of {0}, {1} deep and no deeper: try it on an offcut of the same board, and set the stop by that.'
      : 'Forstner bit of {0}, slowly, through into the waste board: so the far face stays clean.',
  'hole-saw': () =>
    'Hole saw of {0}, slowly, until its pilot bit comes through, then from the other face, so that both stay clean.',
};
