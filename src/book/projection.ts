import type { Point } from '../solid/index.ts';
import { dot } from './convex.ts';

/** A way of looking at the piece: what is right and up in the picture, and where the eye is. Unit vectors. */
export interface Looking {
  readonly right: Point;
  readonly up: Point;
  /** Toward the eye. */
  readonly eye: Point;
}

/** A point of a picture, in millimetres of the piece: x right, y up. */
export type PicturePoint = readonly [x: number, y: number];

export const FROM_FRONT: Looking = { right: [1, 0, 0], up: [0, 0, 1], eye: [0, -1, 0] };
/** The side that is on the right when one stands before the piece. */
export const FROM_RIGHT: Looking = { right: [0, 1, 0], up: [0, 0, 1], eye: [1, 0, 0] };
export const FROM_ABOVE: Looking = { right: [1, 0, 0], up: [0, 1, 0], eye: [0, 0, 1] };

const S2 = Math.SQRT1_2;
const S3 = Math.sqrt(1 / 3);
const S6 = Math.sqrt(1 / 6);

/** Isometric, from the front, the right and above: the three axes are shortened alike. */
export const ISOMETRIC: Looking = {
  right: [S2, S2, 0],
  up: [-S6, S6, 2 * S6],
  eye: [S3, -S3, S3],
};

/** Isometric from the back, the left and above. */
export const ISOMETRIC_BEHIND: Looking = {
  right: [-S2, -S2, 0],
  up: [S6, -S6, 2 * S6],
  eye: [-S3, S3, S3],
};

/** Where a point of the piece lies in the picture. */
export function project(looking: Looking, p: Point): PicturePoint {
  return [dot(looking.right, p), dot(looking.up, p)];
}

/** The convex outline round points of a picture, counter-clockwise. */
export function hullOf(points: readonly PicturePoint[]): PicturePoint[] {
  const sorted = points
    .map((p): PicturePoint => [Math.round(p[0] * 1e6) / 1e6, Math.round(p[1] * 1e6) / 1e6])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const lower = half(sorted);
  return [...lower, ...half(sorted.reverse())];
}

/** One side of an outline, from points in order; without its last, which the other side begins with. */
function half(from: readonly PicturePoint[]): PicturePoint[] {
  const out: PicturePoint[] = [];
  for (const p of from) {
    while (out.length >= 2 && turn(out[out.length - 2]!, out[out.length - 1]!, p) <= 1e-6) out.pop();
    out.push(p);
  }
  out.pop();
  return out;
}

function turn(a: PicturePoint, b: PicturePoint, c: PicturePoint): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
