import type { Traced } from '../../measure/index.ts';
import type { Direction } from '../place.ts';

/**
 * A dowel, a biscuit or a spline in place: a piece of wood glued half into one part and half into another. It keeps them
 * from shifting, and lets them come together along itself alone.
 */
export type Peg = PegInPlace &
  (
    | {
        readonly kind: 'dowel' | 'biscuit';
        /** A fixing of the shop's rack. */
        readonly fixing: string;
      }
    | {
        readonly kind: 'spline';
        /** The strip that it is, by its id. */
        readonly strip: string;
        /** From the front edges of both parts to its own end. */
        readonly behind: Traced;
      }
  );

interface PegInPlace {
  readonly id: string;
  readonly joint: string;
  /** The part whose end it stands in, and the one whose face it goes into. */
  readonly parts: readonly [string, string];
  /** Piece coordinates of its middle, on the faces that touch. */
  readonly at: readonly [Traced, Traced, Traced];
  /** From the first part into the second; absent in a mitre, where it lies square to the slope. */
  readonly direction?: Direction;
  /** Across the joint: a dowel's length, a biscuit's or a spline's width. */
  readonly across: Traced;
  /** A dowel's diameter, a biscuit's or a spline's length along the joint. */
  readonly wide: Traced;
  /** How deep it stands in either part. */
  readonly holds: readonly [Traced, Traced];
  /** Wood left behind its hole in the second part; of a spline, where the groove comes nearest to the outer face. */
  readonly spare: Traced;
}
