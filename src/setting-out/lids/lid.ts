import type { Traced } from '../../measure/index.ts';
import type { Stays } from './stays.ts';

/** A hinged top where it hangs: on the upper edge of the back, by which hinges, held open by what. */
export interface Lid {
  /** Its board, and the back that it hangs on: parts by id. */
  readonly part: string;
  readonly back: string;
  readonly record: string;
  /** Butt hinges of the rack, and what each leaf is fixed with. */
  readonly hinge: string;
  readonly screw: string;
  readonly screwsPerHinge: number;
  readonly screwLength: Traced;
  readonly screwDiameter: Traced;
  /** The hole that is bored for each screw. */
  readonly pilot: Traced;
  readonly leaf: { readonly length: Traced; readonly width: Traced; readonly thickness: Traced };
  /** Middles of the hinges from the left end of the back. */
  readonly hinges: readonly Traced[];
  /** What is open under its front edge. */
  readonly gap: Traced;
  /** What it weighs, and the moment about its hinges when it lies level, N m: that stays must hold. */
  readonly kg: number;
  readonly momentNm: number;
  readonly stays?: Stays;
}
