import type { Traced } from '../../measure/index.ts';

/** A bought pull where it stands: on what, through what, by which screws. */
export interface BoughtPull {
  readonly record: string;
  /** A pull of the rack. */
  readonly pull: string;
  /** The door or front that it stands on, and the board behind that its screws go through first: parts by id. */
  readonly part: string;
  readonly behind?: string;
  /** Between its two holes; a knob has one. */
  readonly holes?: Traced;
  readonly count: number;
  readonly screw: string;
  readonly screwLength: Traced;
  readonly screwDiameter: Traced;
  /** How far the screws stand in the pull, and how deep its thread is. */
  readonly reach: Traced;
  readonly deep: Traced;
}
