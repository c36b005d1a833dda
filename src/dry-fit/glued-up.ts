import type { Act } from '../build/index.ts';
import { ticks, toMm } from '../measure/index.ts';
import type { ReadCard, Worked } from './tool-work.ts';
import { clipped, plainPiece, type VirtualPiece } from './virtual-piece.ts';

/** A plain board planed to a width, as much off either edge, or to a thickness; or why it can’t be. */
export function planed(piece: VirtualPiece, act: Extract<Act, { act: 'plane' }>, read: ReadCard): Worked {
  if (piece.cuts.length > 0) return { fault: 'it has already been worked and is no plain board' };
  const axis = act.across === 'width' ? 1 : 2;
  const to = read(act.to);
  const is = piece.size[axis];
  if (to > is)
    return {
      fault: `it is only ${toMm(is)} mm ${act.across === 'width' ? 'wide' : 'thick'}, and no plane makes it more`,
    };
  const first = Math.floor((is - to) / 2);
  return { piece: clipped(piece, axis, first, first + to) };
}

/** Boards of one thickness side by side, as long as the shortest of them; outer edges and ends are still to be cut. */
export function gluedUp(boards: readonly VirtualPiece[]): Worked {
  if (boards.some((b) => b.cuts.length > 0)) return { fault: 'one of the boards has already been worked' };
  const [first] = boards;
  if (!first) return { fault: 'there is nothing to glue' };
  const [, , thickness] = first.size;
  if (boards.some((b) => b.size[2] !== thickness)) return { fault: 'the boards are not equally thick' };
  const length = Math.min(...boards.map((b) => b.size[0]));
  const width = boards.reduce((sum, b) => sum + b.size[1], 0);
  return { piece: plainPiece(ticks(length), ticks(width), thickness, RAW) };
}

/** Ends that were never quite level, and edges that clamps have dented: a cut anywhere inside takes them off. */
const RAW = [3200, 3200, 3200, 3200] as const;
