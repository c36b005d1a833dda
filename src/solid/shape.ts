/** A point or vector in millimetres: x to the right, y to the back, z up. */
export type Point = readonly [x: number, y: number, z: number];

/**
 * A shape as data, in millimetres. Rooms describe what they mean in these words; an adaptor behind the
 * `Solids` interface turns them into bodies that can be measured.
 */
export type Shape =
  | { readonly kind: 'box'; readonly min: Point; readonly max: Point }
  /** A round bar from one centre to the other; with `toRadius` it tapers (a countersink). */
  | {
      readonly kind: 'cylinder';
      readonly from: Point;
      readonly to: Point;
      readonly radius: number;
      readonly toRadius?: number;
    }
  /** The smallest convex body around the points: wedges, bevels. */
  | { readonly kind: 'hull'; readonly points: readonly Point[] }
  | { readonly kind: 'union'; readonly of: readonly Shape[] }
  | { readonly kind: 'without'; readonly body: Shape; readonly cuts: readonly Shape[] }
  | { readonly kind: 'common'; readonly of: readonly Shape[] }
  | { readonly kind: 'moved'; readonly body: Shape; readonly frame: Frame };

/** Where a local frame stands: its origin and the directions of its three axes (unit vectors, right-handed). */
export interface Frame {
  readonly origin: Point;
  readonly x: Point;
  readonly y: Point;
  readonly z: Point;
}

/** Triangles of a body's skin: three numbers a corner, three corner indices a triangle. */
export interface Mesh {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}
