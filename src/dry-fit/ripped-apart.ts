import type { Act } from '../build/index.ts';
import { type Ticks, toMm } from '../measure/index.ts';
import type { Shape } from '../solid/index.ts';
import type { DryFitFault } from './report.ts';
import type { Halves } from './sawn.ts';
import { boundsOf, overlap } from './shape-bounds.ts';
import type { ReadCard } from './tool-work.ts';
import { clipped, type VirtualPiece } from './virtual-piece.ts';

/** How far a channel is drawn beyond the wood, mm. */
const BEYOND = 5;

/** Two parts of a blank, whatever was cut into it, as the saw leaves them that goes along the line of either; or why it can’t. */
export function rippedApart(
  piece: VirtualPiece,
  act: Extract<Act, { act: 'rip-apart' }>,
  read: ReadCard,
  kerf: number,
): (Halves & readonly [VirtualPiece, VirtualPiece]) | Pick<DryFitFault, 'code' | 'sentence'> {
  const [near, far] = act.widths.map(read) as [Ticks, Ticks];
  const between = piece.size[1] - near - far;
  if (near <= 0 || far <= 0 || between < kerf)
    return {
      code: 'cut-outside',
      sentence: `the two lines leave ${toMm(between)} mm between them, less than the blade takes.`,
    };
  return [half(piece, 0, near), half(piece, piece.size[1] - far, piece.size[1])];
}

/** A channel ends where the wood does, a little beyond the edge as when it was cut there. */
function within(cut: Shape, width: number): Shape {
  if (!isPlainBox(cut)) return cut;
  const { min, max } = boundsOf(cut);
  return {
    kind: 'box',
    min: [min[0], Math.max(min[1], -BEYOND), min[2]],
    max: [max[0], Math.min(max[1], width + BEYOND), max[2]],
  };
}

function isPlainBox(shape: Shape): boolean {
  if (shape.kind !== 'moved') return shape.kind === 'box';
  const { x, y, z } = shape.frame;
  return x[0] === 1 && y[1] === 1 && z[2] === 1 && isPlainBox(shape.body);
}

/** A strip of a worked piece, with the cuts that come into it and the holes that begin in it. */
function half(piece: VirtualPiece, from: number, to: number): VirtualPiece {
  const cut = clipped(piece, 1, from, to);
  const [x, y, z] = cut.size.map(toMm) as [number, number, number];
  const wood = { min: [0, 0, 0], max: [x, y, z] } as const;
  return {
    ...cut,
    cuts: cut.cuts.filter((c) => overlap(boundsOf(c), wood)).map((c) => within(c, y)),
    ways: cut.ways.filter((w) => w.at[1] > 0 && w.at[1] < y),
  };
}
