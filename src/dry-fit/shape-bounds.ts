import type { Frame, Point, Shape } from '../solid/index.ts';

/** A box along the axes, mm. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

/** A box that a shape surely lies in: close, not always tight, and worked out without making the shape. */
export function boundsOf(shape: Shape): Box {
  switch (shape.kind) {
    case 'box':
      return { min: shape.min, max: shape.max };
    case 'cylinder': {
      const r = Math.max(shape.radius, shape.toRadius ?? 0);
      return around([shape.from, shape.to], r);
    }
    case 'hull':
      return around(shape.points, 0);
    case 'union':
    case 'common':
      return around(
        shape.of.map(boundsOf).flatMap((b) => [b.min, b.max]),
        0,
      );
    case 'without':
      return boundsOf(shape.body);
    case 'moved':
      return around(
        cornersOf(boundsOf(shape.body)).map((p) => inFrame(shape.frame, p)),
        0,
      );
  }
}

/** True when two boxes share more than a face. */
export function overlap(a: Box, b: Box): boolean {
  return [0, 1, 2].every((i) => a.min[i]! < b.max[i]! && b.min[i]! < a.max[i]!);
}

/** A point of a frame, where it stands. */
export function inFrame(frame: Frame, p: Point): Point {
  const along = (i: number) =>
    frame.origin[i]! + frame.x[i]! * p[0] + frame.y[i]! * p[1] + frame.z[i]! * p[2];
  return [along(0), along(1), along(2)];
}

function around(points: readonly Point[], margin: number): Box {
  const side = (pick: (...of: number[]) => number, by: number): Point => {
    const along = (i: number) => pick(...points.map((p) => p[i]!)) + by;
    return [along(0), along(1), along(2)];
  };
  return { min: side(Math.min, -margin), max: side(Math.max, margin) };
}

function cornersOf({ min, max }: Box): Point[] {
  const corners: Point[] = [];
  for (const x of [min[0], max[0]])
    for (const y of [min[1], max[1]]) for (const z of [min[2], max[2]]) corners.push([x, y, z]);
  return corners;
}
