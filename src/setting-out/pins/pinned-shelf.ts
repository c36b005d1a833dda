import type { Traced } from '../../measure/index.ts';

/** A loose shelf where it lies: on which pins, in which uprights, at which of their levels. */
export interface PinnedShelf {
  readonly part: string;
  readonly record: string;
  /** A pin of the rack, and how many. */
  readonly pin: string;
  readonly pins: number;
  /** The uprights to its left and right, and what is below it: parts by id. */
  readonly posts: readonly [left: string, right: string];
  readonly below: string;
  readonly hole: { readonly diameter: Traced; readonly depth: Traced };
  /** From the middle of its holes up to its underside. */
  readonly above: Traced;
  /** The level it lies at, counted from the lowest. */
  readonly level: number;
  /** Clear height from what is below to its underside. */
  readonly height: Traced;
  /** How much shorter it is than its opening, at either end. */
  readonly clearance: Traced;
  /** The clear width of its opening. */
  readonly opening: Traced;
}
