import type { Traced } from '../../measure/index.ts';
import type { Stays } from '../lids/stays.ts';

/** A door where it hangs: on which part, with what gaps, by which hinges. */
export interface DoorLeaf {
  readonly part: string;
  readonly record: string;
  readonly hang: 'inset' | 'overlay';
  /** The side its hinges are on, seen from the front. */
  readonly hung: 'left' | 'right' | 'above' | 'below';
  /** The panel that it hangs on, and what is below it: parts by id. */
  readonly post: string;
  readonly below: string;
  /** The upright at the left of one that opens upward or downward. */
  readonly beside?: string;
  /** What it closes, as clear sizes between what bounds it. */
  readonly opening: { readonly width: Traced; readonly height: Traced };
  /** The gap that is kept round it, and between the two of a pair. */
  readonly gap: Traced;
  /** A hinge of the rack, and what each is fixed with. */
  readonly hinge: string;
  readonly screw: string;
  readonly screwsPerHinge: number;
  readonly screwLength: Traced;
  readonly screwDiameter: Traced;
  /** The hole that is bored for each screw. */
  readonly pilot: Traced;
  /** Middles of the hinges from the door’s lower end, lowest first; from its left edge where it opens upward or downward. */
  readonly hinges: readonly Traced[];
  /** A cup’s hole, where it has one, and how far apart the screws of a plate are. */
  readonly cup?: { readonly diameter: Traced; readonly plateScrews: Traced };
  /** What holds one that opens upward or downward: what it weighs, its moment when it lies level, N m, and its stays. */
  readonly held?: { readonly kg: number; readonly momentNm: number; readonly stays?: Stays };
  /** A leaf of a butt hinge, to be let in. */
  readonly leaf?: { readonly length: Traced; readonly width: Traced; readonly thickness: Traced };
}
