import type { Traced } from '../../measure/index.ts';
import type { Side } from '../part.ts';
import type { Direction, TracedBox } from '../place.ts';

/** What a joint is there to do; the spacing of its screws follows from it. */
export type Duty =
  | 'carries'
  | 'base'
  | 'foot'
  | 'back'
  | 'edging'
  | 'frame'
  | 'drawer'
  | 'handle'
  | 'button'
  | 'connect'
  | 'filler';

/** How a joint is held together. */
export type Hold = 'pocket-screws' | 'face-screws' | 'glue' | 'glue-and-screws' | 'dowels' | 'biscuits';

/** True for a joint that is glued, whatever else holds it. */
export function isGlued({ hold }: Pick<Joint, 'hold'>): boolean {
  return hold !== 'pocket-screws' && hold !== 'face-screws';
}

/** True for a joint with dowels or biscuits: it is closed straight along them, and in no other way. */
export function isPegged({ hold }: Pick<Joint, 'hold'>): boolean {
  return hold === 'dowels' || hold === 'biscuits';
}

/** Which way the heads of screws through a face look, and whether they will be seen there. */
export interface Heads {
  readonly looks: Direction;
  /** `covered` by a part that lies on them; `out-of-sight` behind, below or above. */
  readonly sight: 'seen' | 'covered' | 'out-of-sight';
  readonly finish: 'countersunk' | 'plugged';
}

// Joints, parts and fits are made by the hundred. Where one is built of another, the new fields stand before the spread: a
// literal that begins with a spread and goes on with new fields gets a hidden class of its own each time in V8 11 (Node 20),
// which cost a fifth to a third of all setting-out.

/** A contact between two faces: `part` meets `mate`. */
export interface Joint {
  readonly id: string;
  readonly kind: 'butt' | 'rabbet' | 'groove' | 'dado' | 'mitre';
  readonly duty: Duty;
  readonly hold: Hold;
  /** The part that is fixed (the one with pockets, or the outer one of face screws). */
  readonly part: string;
  readonly side: Side;
  readonly mate: string;
  readonly mateSide: Side;
  /** The faces' common area in piece coordinates, channels across it not taken off; flat across the joint. */
  readonly contact: TracedBox;
  readonly fasteners: readonly string[];
  /** Dowels or biscuits of the joint, in order along it. */
  readonly pegs?: readonly string[];
  /** A thin panel that lies between the two, which its screws pass: the back, before the edge that they go into. */
  readonly over?: string;
  /** Set where it is made while `part` lies loose on the bench, before anything stands on that. */
  readonly loose?: true;
  /** Of screws through a face. */
  readonly heads?: Heads;
  /**
   * Where `part` is let into `mate`: how deep, how much wider than the part the place is, and how much deeper it is
   * than the part reaches. Drawn sizes, of which a fit is reckoned.
   */
  readonly letIn?: {
    readonly depth: Traced;
    readonly sideways: Traced;
    readonly endways: Traced;
    /** The channel, by its id, where that is not named by the two parts: one may take several backs. */
    readonly channel?: string;
  };
}

/** A screw in place. It names every part it passes through, head first. */
export interface Fastener {
  readonly id: string;
  readonly joint: string;
  /** A screw of the shop's rack, or of the shopping list. */
  readonly screw: string;
  readonly through: readonly string[];
  /** Piece coordinates of the middle of the underside of the head. */
  readonly head: readonly [Traced, Traced, Traced];
  /** The way it is driven. */
  readonly direction: Direction;
  /** A pocket screw leans by this many degrees from `direction`, away from `leansFrom`. */
  readonly lean?: { readonly degrees: number; readonly toward: Direction };
  readonly length: Traced;
  readonly diameter: Traced;
  /** A washer of the rack under its head, where it stands in a wide hole. */
  readonly washer?: string;
  /** A plug of the rack that covers its head. */
  readonly plug?: string;
  /** How far the thread stands in the last part, square to the joint. */
  readonly holds: Traced;
  /** Wood left between the tip and the far face of the last part. */
  readonly spare: Traced;
}
