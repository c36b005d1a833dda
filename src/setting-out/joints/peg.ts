import type { Traced } from '../../measure/index.ts';
import type { Direction } from '../place.ts';

/**
 * A dowel or a biscuit in place: a piece of wood glued half into one part and half into another. It keeps them from
 * shifting, and lets them come together along itself alone.
 */
export interface Peg {
  readonly id: string;
  readonly joint: string;
  readonly kind: 'dowel' | 'biscuit';
  /** A fixing of the shop's rack. */
  readonly fixing: string;
  /** The part whose end it stands in, and the one whose face it goes into. */
  readonly parts: readonly [string, string];
  /** Piece coordinates of its middle, on the faces that touch. */
  readonly at: readonly [Traced, Traced, Traced];
  /** From the first part into the second; absent in a mitre, where it lies square to the slope. */
  readonly direction?: Direction;
  /** Across the joint: a dowel's length, a biscuit's width. */
  readonly across: Traced;
  /** A dowel's diameter, a biscuit's length along the joint. */
  readonly wide: Traced;
  /** How deep it stands in either part. */
  readonly holds: readonly [Traced, Traced];
  /** Wood left behind its hole in the second part. */
  readonly spare: Traced;
}
