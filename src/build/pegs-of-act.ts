import type { Traced } from '../measure/index.ts';

/** Dowels or biscuits of one size between a part that is set and one that stands there. */
export interface PegsIn {
  /** The mark of the part there. */
  readonly with: string;
  readonly fixing: string;
  readonly count: number;
  /** Across the joint: a dowel's length, a biscuit's width. */
  readonly across: Traced;
  /** A dowel's diameter, a biscuit's length. */
  readonly wide: Traced;
}

/** A spline between the slopes of a part that is set and one that stands there. */
export interface SplineIn {
  /** The mark of the part there. */
  readonly with: string;
  /** The spline's own mark. */
  readonly strip: string;
  /** As long along the joint and as wide across it as it was cut. */
  readonly length: Traced;
  readonly width: Traced;
  /** From the front edge of the part there to the spline's end. */
  readonly behind: Traced;
}
