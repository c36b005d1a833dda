import type { Traced } from '../../measure/index.ts';
import type { Part } from '../part.ts';

/** A bevelled cleat: two strips parted from one blank by a slanting cut, one on the case, the other on the wall. */
export interface Cleat<P = Part> {
  readonly record: string;
  /** What both are parted from; no part of the piece. */
  readonly blank: P;
  /** The strip behind the back of the case, and the one on the wall that it hooks over, by their parts. */
  readonly onCase: string;
  readonly onWall: string;
  /** The back that they are screwed on through, by its part; absent where they go between the sides. */
  readonly onBack?: string;
  /** A strip as thick as they are, at the foot of a case whose sides don’t come to the wall. */
  readonly spacer?: string;
  /** How much higher than it will hang the case is lifted to come over it. */
  readonly lift: Traced;
}
