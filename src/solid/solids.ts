import type { Frame, Mesh, Point, Shape } from './shape.ts';

/**
 * A body held by the solids adaptor. Bodies are values: every operation gives a new one, and each must be freed
 * (or made inside `Solids.within`, which frees all it made).
 */
export interface Body {
  /** Cubic millimetres. */
  volume(): number;
  /** Centre of volume; of an empty body the origin. */
  centre(): Point;
  /** The bounding box; of an empty body undefined. */
  bounds(): { readonly min: Point; readonly max: Point } | undefined;
  /** True when nothing is left (less than a thousandth of a cubic millimetre). */
  isEmpty(): boolean;
  without(other: Body): Body;
  common(other: Body): Body;
  union(other: Body): Body;
  moved(frame: Frame): Body;
  /** The parts that hang together, largest first. */
  pieces(): readonly Body[];
  mesh(): Mesh;
  free(): void;
}

/** What the product needs of a solid modeller. Calls are synchronous; opening the adaptor is not. */
export interface Solids {
  make(shape: Shape): Body;
  /** Runs `work` and frees every body made meanwhile, also when it throws. What it returns must be plain data. */
  within<T>(work: () => T): T;
}
