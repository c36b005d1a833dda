import type { Act } from '../build/index.ts';
import { type Ticks, ticks, toMm } from '../measure/index.ts';
import type { Shape } from '../solid/index.ts';
import type { DryFitFault } from './report.ts';
import { type ReadCard, sloped } from './tool-work.ts';
import { clipped, type RawEdges, type VirtualPiece } from './virtual-piece.ts';

/** What lies before and behind a cut, where anything does. */
export type Halves = readonly [before: VirtualPiece | undefined, behind: VirtualPiece | undefined];

/** A straight cut through a plain board, with so wide a blade (ticks); or why there is none. */
export function sawn(
  piece: VirtualPiece,
  act: Extract<Act, { act: 'saw' }>,
  read: ReadCard,
  kerf: number,
): Halves | Pick<DryFitFault, 'code' | 'sentence'> {
  // A slope along the whole of an edge is there at any length.
  const slopes = act.across === 'length' && piece.ways.length === 0;
  if (piece.cuts.some((c) => !slopes || !runsAlong(piece, c)))
    return { code: 'off-the-wood', sentence: 'it has already been worked and is no plain board.' };
  const axis = act.across === 'length' ? 0 : 1;
  const at = read(act.at);
  const size = piece.size[axis];
  const [before, behind] = act.keep === 'before' ? [at, at + kerf] : [at - kerf, at];
  if (before < 0 || at > size)
    return {
      code: 'cut-outside',
      sentence: `the line lies off the wood: ${act.workpiece} measures ${toMm(size)} mm that way.`,
    };
  const rough = act.rough === undefined ? 0 : read(act.rough);
  return [
    before > 0 ? roughSide(clipped(piece, axis, 0, before), 2 * axis + 1, rough) : undefined,
    behind < size ? roughSide(clipped(piece, axis, behind, size), 2 * axis, rough) : undefined,
  ];
}

/** A slope from end to end, as the blade leaves it that runs out at both; a mitred end is none. */
function runsAlong({ size }: VirtualPiece, cut: Shape): boolean {
  return cut.kind === 'hull' && cut.points.every(([x]) => x < 0 || x > toMm(size[0]));
}

/** A plain board parted along its grain by a tilted blade of so wide a kerf (ticks); or why it can’t be. */
export function parted(
  piece: VirtualPiece,
  act: Extract<Act, { act: 'part' }>,
  read: ReadCard,
  kerf: number,
): readonly [VirtualPiece, VirtualPiece] | Pick<DryFitFault, 'code' | 'sentence'> {
  if (piece.cuts.length > 0)
    return { code: 'off-the-wood', sentence: 'it has already been worked and is no plain board.' };
  const at = read(act.at);
  const [, width, thickness] = piece.size;
  const radians = (act.angle * Math.PI) / 180;
  // Where the blade leaves the under face, on its far side.
  const below = Math.round(at - thickness * Math.tan(radians) + kerf / Math.cos(radians));
  if (below <= 0 || at > width || below >= width)
    return { code: 'cut-outside', sentence: `the line lies off the wood: ${act.workpiece} is not so wide.` };
  return [
    sloped(clipped(piece, 1, 0, at), 'far', act.angle, 'show'),
    sloped(clipped(piece, 1, below, width), 'near', act.angle, 'under'),
  ];
}

/** A piece with so much more at one side that is not sawn to a mark. */
function roughSide(piece: VirtualPiece, side: number, rough: Ticks | 0): VirtualPiece {
  return { ...piece, raw: piece.raw.map((r, i) => (i === side ? r + rough : r)) as unknown as RawEdges };
}

/** A plain board whose length is taken to run the other way. */
export function quarterTurned(piece: VirtualPiece): VirtualPiece {
  const [length, width, thickness] = piece.size;
  const [start, end, near, far] = piece.raw;
  return { ...piece, size: [ticks(width), ticks(length), thickness], raw: [near, far, start, end] };
}
