import type { Traced } from '../../measure/index.ts';

/** The levellers under the bottom of one case, all alike. */
export interface Levellers {
  /** The base that asks for them. */
  readonly record: string;
  /** A leveller of the rack. */
  readonly fixing: string;
  /** The part that their sleeves are let into, by its id. */
  readonly part: string;
  /** Where their middles stand, and by which hole of the part each goes in. */
  readonly at: readonly { readonly x: Traced; readonly y: Traced; readonly hole: string }[];
  /** From the floor to the wood, where the floor is highest. */
  readonly height: Traced;
  readonly lowest: Traced;
  readonly highest: Traced;
  readonly diameter: Traced;
  readonly deep: Traced;
  /** Of their feet. */
  readonly width: Traced;
}
