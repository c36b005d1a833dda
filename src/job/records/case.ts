import * as v from 'valibot';
import { Id, MassText } from '../typed.ts';
import { baseFields } from './base-fields.ts';
import { placeFields } from './group.ts';

/** How the panels of a case are joined to one another. */
export const CaseJoints = v.picklist([
  'pocket-screws',
  'face-screws',
  'rabbet',
  'dado',
  'stopped-dado',
  'tongue',
  'dowels',
  'biscuits',
  'mitre',
]);
export type CaseJoints = v.InferOutput<typeof CaseJoints>;

/** A box of panels with one opening. The sides run through unless it says otherwise; dividers and shelves stand between. */
export const CaseRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('case'),
  /** The lot its panels are cut from. */
  board: Id,
  /** How its panels are joined; what the tools allow for when absent. */
  joints: v.optional(CaseJoints),
  /**
   * What becomes of heads that would be seen, of screws through faces. When absent they are plugged if there are plugs
   * on the rack.
   */
  heads: v.optional(v.picklist(['countersunk', 'plugged'])),
  /**
   * What keeps mitred corners from sliding while they are glued: nothing but tape, on which they fold up, or biscuits, or a
   * spline along each corner.
   */
  inMitres: v.optional(v.picklist(['biscuits', 'spline'])),
  /** The lot that splines are cut from. */
  splineBoard: v.optional(Id),
  /**
   * Which runs through at the lower corners: the sides, with the bottom between them, or the bottom, under both of them; or it
   * runs under one side alone, and ends at the other.
   */
  bottom: v.optional(v.picklist(['between', 'under', 'under-left', 'under-right'])),
  /** The same at the upper corners; not with an applied top, which takes the place of a lid. */
  lid: v.optional(v.picklist(['between', 'over', 'over-left', 'over-right'])),
  /**
   * Beside another in a row: `shared` where its neighbour’s side serves it as well, and it has none of its own there.
   */
  leftSide: v.optional(v.picklist(['own', 'shared'])),
  rightSide: v.optional(v.picklist(['own', 'shared'])),
  /**
   * What stays joined for the dados and rows of holes that two parts share: its sides, its dividers two by two, or both.
   * Each pair is cut as one blank and parted after that work.
   */
  oneBlank: v.optional(v.picklist(['sides', 'dividers', 'sides-and-dividers'])),
  /** Its left side, lid and right side are cut from one strip in this order, so that the grain runs round it. */
  oneStrip: v.optional(v.picklist(['sides-and-lid'])),
  /** What stands on its bottom, all of it together. */
  load: v.optional(MassText),
  ...placeFields,
});
export type CaseRecord = v.InferOutput<typeof CaseRecord>;
