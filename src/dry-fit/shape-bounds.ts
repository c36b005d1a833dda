import type { Frame, Point, Shape } from '../solid/index.ts';

/** A box along the axes, mm. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

// A shape never changes, and cuts are looked at wherever their board goes.
const KNOWN = new WeakMap<Shape, Box>();

/** A box that a shape surely lies in: close, not always tight, and worked out without making the shape. */
export function boundsOf(shape: Shape): Box {
  let known = KNOWN.get(shape);
  if (!known) {
    known = bounds(shape);
    KNOWN.set(shape, known);
  }
  return known;
}

function bounds(shape: Shape): Box {
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
      return movedBox(boundsOf(shape.body), shape.frame);
  }
}

/** True for a box that lies along the axes: what a blade or bit takes that runs straight. */
export function isBox(shape: Shape): boolean {
  if (shape.kind !== 'moved') return shape.kind === 'box';
  const { x, y, z } = shape.frame;
  return [x, y, z].every((v) => v.some((c) => Math.abs(c) === 1)) && isBox(shape.body);
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

/** The box that a box lies in once it is moved and turned: along each axis, the least and the most of each of its own sides. */
function movedBox({ min, max }: Box, { origin, x, y, z }: Frame): Box {
  const reach = (i: number, pick: (a: number, b: number) => number) =>
    origin[i]! +
    pick(x[i]! * min[0], x[i]! * max[0]) +
    pick(y[i]! * min[1], y[i]! * max[1]) +
    pick(z[i]! * min[2], z[i]! * max[2]);
  return {
    min: [reach(0, Math.min), reach(1, Math.min), reach(2, Math.min)],
    max: [reach(0, Math.max), reach(1, Math.max), reach(2, Math.max)],
  };
}
