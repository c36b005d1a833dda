import type { Traced } from '../measure/index.ts';
import { partsToCut } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { Yield } from './operation.ts';
import { underRail } from './rail.ts';
import { stockWord } from './stock-words.ts';
import { BY_HAND, isTooSmall } from './too-small.ts';

/** A cut that is to get its card. */
export interface CutDraft {
  readonly id: string;
  readonly title: string;
  readonly kind: 'true-edge' | 'square-end' | 'rip' | 'crosscut';
  readonly workpiece: string;
  /** What it measures before the cut. */
  readonly of: { readonly length: Traced; readonly width: Traced };
  readonly across: 'length' | 'width';
  readonly at: Traced;
  readonly keep: 'before' | 'behind';
  /** How much there is across the cut, where the far side is kept. */
  readonly whole?: Traced;
  readonly yields: readonly [Yield | undefined, Yield | undefined];
  /** Lines before the marks, and lengths that they name after the cut's own. */
  readonly first?: readonly string[];
  readonly more?: readonly Traced[];
  readonly extra?: string;
  /** Veneer tape: scissors cut it. */
  readonly tape?: boolean;
  /** A strip that nothing was cut off yet. */
  readonly uncut?: boolean;
}

/** How veneer tape is cut. */
export const TAPE_CUT =
  'Cut with sharp scissors, or a knife along the square; tape from a roll curls, so weigh it down.';

/** One straight cut, as its card tells it: two marks from a named edge, the rail on the part to keep. */
export function cut(bench: Bench, draft: CutDraft): void {
  const { across, keep, workpiece } = draft;
  const strip = isStrip(bench, workpiece);
  const { length, width } = draft.of;
  // A piece may be wider than it is long: which of its sides is meant must not be guessed.
  const short = !strip && bench.ledger.ticks(length) < bench.ledger.ticks(width);
  const reference =
    across === 'width'
      ? `the trued ${short ? 'edge, here a short side' : 'long edge'}`
      : `the squared end${short ? ', here a long side' : ''}`;
  const trimming = draft.kind === 'true-edge' || draft.kind === 'square-end';
  const from =
    trimming && keep === 'behind' ? (across === 'width' ? 'the raw long edge' : 'the raw end') : reference;
  const saw = strip ? stripSaw(bench, draft.at) : sheetSaw(bench, draft.at);
  const byHand = !draft.tape && isTooSmall(bench, saw, draft);
  const lines = draft.tape
    ? [`Mark {0} from ${from} and square the line across.`, TAPE_CUT]
    : byHand
      ? [`Mark {0} from ${from} and square the line across.`, ...BY_HAND]
      : strip
        ? [
            `Mark {0} from ${from} and square the line round.`,
            saw === 'mitre-saw'
              ? 'Against the fence, blade down slowly on the waste side of the line, so that the mark stays on the part to keep; let it stop before it comes up.'
              : 'Cut on the waste side of the line, so that the mark stays on the part to keep: a fine handsaw in a mitre box, or the saw with the strip clamped down beside a board of its own thickness.',
          ]
        : [
            `Mark {0} from ${from}, near both ${short ? 'of its ends' : across === 'width' ? 'ends' : 'long edges'}.`,
            `${bench.tool('guide-rail') ? 'Lay the rail on the part to keep, its edge on both marks, beyond the wood at both ends' : 'Clamp a straight board to the part to keep as a fence, beyond the wood at both ends and as far from both marks as the saw’s shoe reaches beside its blade: take that from the test cut'}; the kerf falls on the ${keep === 'before' ? 'far' : 'near'} side of the line.`,
            ...(underRail(bench, keptOf(bench, draft))
              ? [
                  'What is kept is narrower than the rail: lay a board of the same thickness close beside it to carry the rail, and fix both down, with clamps or screws in waste.',
                ]
              : []),
          ];
  if (draft.uncut && !draft.tape)
    lines.unshift(
      'Check its end with the square, and saw it square first where it isn’t; of what stays after a cut, the fresh end is the squared one.',
    );
  lines.unshift(...(draft.first ?? []));
  if (draft.extra !== undefined) lines.push(draft.extra);
  bench.do(
    {
      id: draft.id,
      kind: draft.kind,
      stage: strip ? 'strips' : 'sheets',
      title: draft.title,
      does: {
        act: 'saw',
        workpiece,
        across,
        at: draft.at,
        keep,
        yields: draft.yields,
        ...(draft.tape ? { knife: true as const } : {}),
      },
      ...(draft.tape || byHand ? {} : { tool: saw }),
      ...(strip ? {} : { faceUp: 'better face down' }),
      reference: from,
      lines,
      lengths: [draft.at, ...(draft.more ?? [])],
      cautions: [cutCaution(saw, { byHand, tape: draft.tape === true })],
    },
    [workpiece],
  );
  for (const y of draft.yields) if (y) bench.comesFrom(y.name, draft.id);
}

/** The caution of a straight cut, by what it is made with. */
export function cutCaution(
  saw: 'mitre-saw' | 'circular-saw',
  { tape, byHand }: { readonly tape: boolean; readonly byHand: boolean },
): string {
  if (tape) return CAUTION.knife;
  if (byHand) return CAUTION.handsaw;
  return saw === 'mitre-saw' ? CAUTION.mitreSaw : CAUTION.saw;
}

/** The saw that cuts strips to a length. */
export function stripSaw(bench: Bench, at: Traced): 'mitre-saw' | 'circular-saw' {
  return mitres(bench, at) ? 'mitre-saw' : 'circular-saw';
}

function sheetSaw(bench: Bench, at: Traced): 'mitre-saw' | 'circular-saw' {
  return bench.tool('circular-saw') ? 'circular-saw' : stripSaw(bench, at);
}

/** Is there a mitre saw that can be set to this length, or nothing else to cut it with? */
function mitres(bench: Bench, at: Traced): boolean {
  if (!bench.tool('mitre-saw')) return false;
  const t = (x: Traced) => bench.ledger.ticks(x);
  return !bench.tool('circular-saw') || t(at) % t(bench.finest('mitre-saw')) === 0;
}

export function isTape(bench: Bench, lot: string): boolean {
  return bench.job.shop.rack.lots.find((l) => l.id === lot)?.tape !== undefined;
}

/** How wide the piece is that the rail lies on. */
function keptOf(bench: Bench, { keep, at, whole }: CutDraft): Traced {
  return keep === 'behind' && whole !== undefined
    ? bench.ledger.less('what the rail lies on', whole, at)
    : at;
}

/** What the stock of a lot is called. */
export function wordOf(bench: Bench, lot: string): 'sheet' | 'board' | 'strip' {
  return stockWord(bench.job.shop.rack.lots.find((l) => l.id === lot)!);
}

export function isStripLot(bench: Bench, lot: string): boolean {
  return bench.job.shop.rack.lots.some((l) => l.id === lot && l.form === 'strip');
}

function isStrip(bench: Bench, workpiece: string): boolean {
  return (
    /^L\d/.test(workpiece) || partsToCut(bench.setOut).some((p) => p.mark === workpiece && p.form === 'strip')
  );
}
