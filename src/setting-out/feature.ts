import type { Traced } from '../measure/index.ts';
import type { Side } from './part.ts';

/** One of the two broad faces. */
export type Face = 'show' | 'under';
/** One of the four edges. */
export type Edge = 'start' | 'end' | 'near' | 'far';

interface FeatureBase {
  /** `part#cause`: the part, and the joint or record that asks for the feature. */
  readonly id: string;
  /** What it is for, in a maker's words: `for the back`. */
  readonly purpose: string;
}

/**
 * A rabbet: a step cut along an edge, out of a face. It runs the edge's full length between `from` and `to`,
 * measured along the edge from the start (for near and far) or from the near edge (for start and end).
 */
export interface Rabbet extends FeatureBase {
  readonly kind: 'rabbet';
  readonly face: Face;
  readonly edge: Edge;
  /** In from the edge. */
  readonly width: Traced;
  /** In from the face. */
  readonly depth: Traced;
  readonly from: Traced;
  readonly to: Traced;
}

/**
 * A channel out of a face, beside an edge: across the grain it is a dado. Its nearer wall lies `inset` from the
 * edge; it runs between `from` and `to`, measured along that edge as for a rabbet.
 */
export interface Groove extends FeatureBase {
  readonly kind: 'groove';
  readonly face: Face;
  readonly edge: Edge;
  readonly inset: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  readonly from: Traced;
  readonly to: Traced;
}

/** A corner sawn out, through the whole thickness: `length` along the part's length, `width` across it. */
export interface Notch extends FeatureBase {
  readonly kind: 'notch';
  readonly end: 'start' | 'end';
  readonly edge: 'near' | 'far';
  readonly length: Traced;
  readonly width: Traced;
}

/** An edge cut at a slant; the named face keeps its full size, the other loses thickness x tan(angle). */
export interface Bevel extends FeatureBase {
  readonly kind: 'bevel';
  readonly edge: Edge;
  /** Degrees off square. */
  readonly angle: number;
  readonly fullFace: Face;
}

/** A round hole square to the side it starts from. */
export interface Hole extends FeatureBase {
  readonly kind: 'hole';
  /** What goes in: a screw, a hinge's cup, a shelf's pin, a dowel, the sleeve of a leveller, or (`cable`, `vent`, `finger`, `row`) nothing that the plan knows of. */
  readonly use:
    | 'pilot'
    | 'clearance'
    | 'cup'
    | 'pin'
    | 'dowel'
    | 'cable'
    | 'vent'
    | 'finger'
    | 'row'
    | 'leveller';
  readonly side: Side;
  /**
   * Where, on the side it starts from: on a face along the length and across the width; on an edge along the
   * edge (as for a rabbet) and up from the under face.
   */
  readonly at: readonly [Traced, Traced];
  readonly diameter: Traced;
  /** Absent: right through. */
  readonly depth?: Traced;
  /** Diameter of the countersink at the mouth (82 or 90 degrees by the screw's head). */
  readonly countersink?: Traced;
  /** A wider, flat-bottomed hole at the mouth, in which the head sits under a plug; `depth` counts from the face. */
  readonly counterbore?: { readonly diameter: Traced; readonly depth: Traced };
  /** The measures of its part that it stands half way along, or in a row that does: it is marked from that middle. */
  readonly middle?: readonly ('length' | 'width')[];
}

/** A slot with round ends, right through, routed from a face. */
export interface Slot extends FeatureBase {
  readonly kind: 'slot';
  /** Air goes through it, or a screw that moves with what it holds. */
  readonly use: 'vent' | 'screw';
  readonly face: Face;
  /** Whether it runs along the part's length or its width. */
  readonly run: 'length' | 'width';
  /** Its middle: along the length, and across the width. */
  readonly at: readonly [Traced, Traced];
  /** From end to end, and side to side. */
  readonly length: Traced;
  readonly width: Traced;
}

/**
 * A slot for a biscuit: what a round cutter takes out that is plunged square into a side. Its middle is given as that of
 * a hole; it runs along the edge, and on a face along the part's length or width.
 */
export interface BiscuitSlot extends FeatureBase {
  readonly kind: 'biscuit-slot';
  readonly side: Side;
  readonly at: readonly [Traced, Traced];
  readonly run: 'length' | 'width';
  /** In a mitred end it lies square to the slope: its middle is then measured down the slope, from this inner face. */
  readonly slopeFrom?: Face;
  readonly depth: Traced;
  /** How wide the slot is, and the cutter's diameter. */
  readonly kerf: Traced;
  readonly cutter: Traced;
}

/**
 * A groove for a spline in the slope of a mitred end, square to the slope. It runs between `from` and `to`, measured along
 * the end as for a rabbet.
 */
export interface SplineGroove extends FeatureBase {
  readonly kind: 'spline-groove';
  readonly edge: 'start' | 'end';
  /** The inner face: what lies down the slope is measured from its arris. */
  readonly slopeFrom: Face;
  /** Down the slope to its nearer wall. */
  readonly inset: Traced;
  /** Down the slope from wall to wall. */
  readonly width: Traced;
  /** Square to the slope. */
  readonly depth: Traced;
  readonly from: Traced;
  readonly to: Traced;
}

/** A pocket hole: bored into a face at a slant so that a screw leaves through the middle of an edge. */
export interface Pocket extends FeatureBase {
  readonly kind: 'pocket';
  readonly face: Face;
  readonly edge: Edge;
  /** Along the edge, as for a rabbet. */
  readonly along: Traced;
}

export type Feature = Rabbet | Groove | Notch | Bevel | Hole | Slot | Pocket | BiscuitSlot | SplineGroove;
