import { type Ticks, ticks, toMm } from '../measure/index.ts';
import type { Point, Shape } from '../solid/index.ts';

/** The way of a screw, a pin, a dowel, a biscuit or a spline into a piece, in the piece's own frame, in mm: where it leaves the wood, and where to. */
export interface Way {
  readonly kind: 'pocket' | 'hole' | 'pin' | 'dowel' | 'biscuit' | 'spline';
  /** The side of the workpiece it was bored at: the edge a pocket leaves by, the side a hole starts from. */
  readonly side: string;
  /** On the axis: of a pocket, where it comes out of the edge; of a hole, its mouth. */
  readonly at: Point;
  /** Unit vector along which a screw is driven. */
  readonly along: Point;
  /** From `at` back to where the head sits, along the axis. */
  readonly seat: number;
  /** How deep a blind hole goes; absent for one right through. */
  readonly depth?: number;
  /** Of a groove how wide it is. */
  readonly diameter: number;
  /** How long a groove is. */
  readonly run?: number;
  /** Of a biscuit's slot, the way square to the disc that cut it: a biscuit gives nothing there. */
  readonly square?: Point;
  /** Set where its mouth is countersunk. */
  readonly sunk?: true;
  /** How wide the mouth is bored where the head sits under a plug. */
  readonly plugged?: number;
}

/**
 * A piece of wood in the virtual shop: a box in its own frame (x along its length, y across its width, z from its
 * under face), and what has been taken out of it so far. Never changed: every operation gives a new one.
 */
export interface VirtualPiece {
  readonly size: readonly [length: Ticks, width: Ticks, thickness: Ticks];
  readonly cuts: readonly Shape[];
  readonly ways: readonly Way[];
  /** How much wood at each edge is as the sheet came, not sawn to a mark. */
  readonly raw: RawEdges;
}

/** Raw wood at the start, the end, the near and the far edge, in ticks. */
export type RawEdges = readonly [start: number, end: number, near: number, far: number];

/** A rectangular piece as it comes from the rack or the saw. */
export function plainPiece(
  length: number,
  width: number,
  thickness: number,
  raw: RawEdges = [0, 0, 0, 0],
): VirtualPiece {
  return { size: [ticks(length), ticks(width), ticks(thickness)], cuts: [], ways: [], raw };
}

/** The piece as a shape in its own frame, mm. */
export function shapeOfPiece(piece: VirtualPiece): Shape {
  const [x, y, z] = piece.size;
  const box: Shape = { kind: 'box', min: [0, 0, 0], max: [toMm(x), toMm(y), toMm(z)] };
  return piece.cuts.length === 0 ? box : { kind: 'without', body: box, cuts: piece.cuts };
}

/** The piece with its ends taken off along one axis, and its frame begun anew at what remains. */
export function clipped(piece: VirtualPiece, axis: 0 | 1 | 2, from: number, to: number): VirtualPiece {
  const size = [...piece.size] as [Ticks, Ticks, Ticks];
  size[axis] = ticks(to - from);
  const raw = [...piece.raw] as [number, number, number, number];
  if (axis !== 2) {
    raw[2 * axis] = Math.max(0, raw[2 * axis]! - from);
    raw[2 * axis + 1] = Math.max(0, raw[2 * axis + 1]! - (piece.size[axis] - to));
  }
  if (from === 0) return { ...piece, size, raw };
  const by: [number, number, number] = [0, 0, 0];
  by[axis] = -toMm(from);
  return {
    size,
    raw,
    cuts: piece.cuts.map((c) => shifted(c, by)),
    ways: piece.ways.map((w) => ({ ...w, at: [w.at[0] + by[0], w.at[1] + by[1], w.at[2] + by[2]] })),
  };
}

function shifted(shape: Shape, by: Point): Shape {
  return { kind: 'moved', body: shape, frame: { origin: by, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } };
}
