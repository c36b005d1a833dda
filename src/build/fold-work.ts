import type { Traced } from '../measure/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import type { Standing } from './seating.ts';
import { listWords } from './words.ts';

/** True for a corner of a case whose two panels are mitred. */
export function isCorner(joint: Joint): boolean {
  return joint.kind === 'mitre' && joint.duty === 'carries';
}

/** The panels of a mitred case in the order in which they are folded up; none of another case. */
export function foldedParts(bench: Bench, parts: readonly Part[]): readonly Part[] {
  const corners = bench.setOut.joints.filter(isCorner);
  return parts.filter((p) => corners.some((j) => j.part === p.id || j.mate === p.id));
}

/** What a card says of corners: before pegs and splines go in, and then. */
export interface FoldLines {
  readonly before: readonly string[];
  readonly lines: readonly string[];
}

/**
 * How the corners of a case are taped, glued and folded, as the card of a panel tells it; nothing of other panels.
 * Lengths are added to those of the card.
 */
export function foldLines(
  bench: Bench,
  standing: Standing,
  part: Part,
  row: readonly Part[],
  lengths: Traced[],
): FoldLines {
  if (!row.includes(part)) return { before: [], lines: [] };
  const corners = bench.setOut.joints.filter((j) => isCorner(j) && row.some((p) => p.id === j.part));
  const card: CornerCard = {
    part,
    row,
    both: corners.length === 2,
    begins: !row.some((p) => p !== part && standing.has(p.id)),
    mates: corners.flatMap((j) => {
      const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
      return other !== undefined && standing.has(other) ? [standing.get(other)!.part.mark] : [];
    }),
    glued: corners.some((j) => standing.has(j.part) && standing.has(j.mate)),
    last: row.every((p) => p === part || standing.has(p.id)),
  };
  const pegged = corners.some((j) => j.pegs && (j.part === part.id || j.mate === part.id));
  const by = bench.setOut.pegs.some((p) => p.kind === 'spline' && p.parts.includes(part.id))
    ? SPLINES
    : BISCUITS;
  const lines = pegged ? drawnTogether(card, by) : foldedUp(card);
  // All slopes drink at the same time: said once, before the first corner.
  const before = card.begins || card.glued ? [] : [drinkLine(row)];
  const open = card.last ? openEnd(bench, corners) : undefined;
  if (!open) return { before, lines };
  const n = lengths.push(open.width) - 1;
  const [left, right] = open.sides;
  return {
    before,
    lines: [
      ...lines.slice(0, -1),
      `Nothing holds the upper ends of ${left} and ${right} yet: put the spacer stick, {${n}} long, between them there before ${pegged ? 'the clamps draw' : 'tape goes round them over it'}; it stays until the glue has set.`,
      ...lines.slice(-1),
    ],
  };
}

/** What the card of a panel tells its corners by. */
interface CornerCard {
  readonly part: Part;
  /** All panels that are mitred together, in their order. */
  readonly row: readonly Part[];
  /** Two corners, and not four. */
  readonly both: boolean;
  /** The first of its row: there is nothing to be glued to yet. */
  readonly begins: boolean;
  /** Marks of those that stand and meet it in a mitre. */
  readonly mates: readonly string[];
  /** A corner before this has glue in it. */
  readonly glued: boolean;
  readonly last: boolean;
}

function foldedUp({ part, row, begins, mates }: CornerCard): readonly string[] {
  if (begins) {
    const bottom = part.mark;
    const [left, right, ...lids] = row.filter((p) => p !== part).map((p) => p.mark);
    const order = [left, bottom, right, ...lids];
    return [
      `First dry: lay ${listWords(order as readonly string[])} in a row, outer faces up, tip to tip along a straightedge, front edges level.`,
      'Strong tape across every joint, a hand apart, stretched tight; then one strip along it. Turn the row over on a flat board: the mitres stand open, and folded up they close. Try that once, and unfold it.',
    ];
  }
  return [
    `Glue both slopes between ${part.mark} and ${listWords(mates)} again. Fold ${part.mark} up until the slopes close.`,
    mates.length > 1
      ? 'Draw the last corner together with tape, as tight as the others; then a band clamp round the case, or battens and clamps with blocks at the corners.'
      : 'The tape is the hinge and the clamp; wipe out what comes into the corner with a sharpened stick.',
  ];
}

/** What stands in the slopes of corners, and in what. */
const BISCUITS = { pegs: 'biscuits', one: 'biscuits', holes: 'slots' } as const;
const SPLINES = { pegs: 'splines', one: 'spline', holes: 'grooves' } as const;

/** Corners with biscuits or splines don't fold: they are pushed on square to their slopes, and closed all together. */
function drawnTogether(
  { part, row, both, begins, mates, last }: CornerCard,
  { pegs, one, holes }: typeof BISCUITS | typeof SPLINES,
): readonly string[] {
  const corners = both ? 'both corners' : 'all corners';
  if (begins)
    return [
      `First dry, with all ${pegs}: ${listWords(row.map((p) => p.mark))} go together with ${corners} a little open, and are then drawn up together. A band clamp round the case, or clamps both ways with blocks cut to 45 degrees, lie ready and opened to size.`,
    ];
  return [
    `Glue both slopes between ${part.mark} and ${listWords(mates)} again, the ${holes} last. Push ${part.mark} onto its ${mates.length > 1 ? pegs : one} square to the slope, and leave the corner open by a finger’s breadth.`,
    ...(last
      ? [
          `Now close ${corners} together, a little at each in turn, with the band clamp or the clamps: a corner that is shut first keeps the ${both ? 'other' : 'others'} from coming on.`,
        ]
      : []),
  ];
}

function drinkLine(row: readonly Part[]): string {
  return `Before all else brush glue on every slope of ${listWords(row.map((p) => p.mark))}: sawn edges drink. Wait two minutes.`;
}

/** What must lie ready for corners that are closed in one go, besides glue and clamps. Lengths are added to the card’s. */
export function cornerKit(bench: Bench, joints: readonly Joint[], lengths: Traced[]): readonly string[] {
  const corners = joints.filter(isCorner);
  if (corners.length === 0) return [];
  const open = openEnd(bench, corners);
  return [
    corners.some((j) => j.pegs) ? 'a band clamp (or blocks cut to 45 degrees for the clamps)' : 'strong tape',
    ...(open ? [`a spacer stick {${lengths.push(open.width) - 1}} long`] : []),
  ];
}

/** The two sides whose upper ends no panel is mitred to, and how far they stand apart inside; undefined for a closed ring. */
function openEnd(
  bench: Bench,
  corners: readonly Joint[],
): { readonly sides: readonly [string, string]; readonly width: Traced } | undefined {
  if (corners.length !== 2) return undefined;
  const l = bench.ledger;
  const ends = corners.flatMap((j) => [j.part, j.mate]);
  const [left, right] = bench.setOut.parts
    .filter((p) => ends.filter((id) => id === p.id).length === 1)
    .map((p) => ({ mark: p.mark, planes: planesOf(l, p).planes }))
    .sort((a, b) => l.ticks(a.planes['-x']) - l.ticks(b.planes['-x']));
  if (!left || !right) return undefined;
  const width = l.less('clear width between the sides', right.planes['-x'], left.planes['+x']);
  return { sides: [left.mark, right.mark], width: bench.set('marking', width) };
}
