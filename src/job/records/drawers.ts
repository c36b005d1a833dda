import * as v from 'valibot';
import { Id, MarginText, MassText, Name, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Drawers that fill an opening, one above the other: boxes on runners, with fronts screwed on. */
export const DrawersRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('drawers'),
  /** The lots that the boxes, their bottoms and the fronts are cut from. */
  board: Id,
  bottomBoard: Id,
  frontBoard: Id,
  /** How many. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20))),
  /** How much higher each front is than the one above it; all are equal when absent. */
  grade: v.optional(SizeFormula),
  /** `inset`: fronts inside the opening, level with the case’s front. `overlay`: before the case’s front. */
  hang: v.picklist(['inset', 'overlay']),
  /** The gap round the fronts; by the trade’s figures when absent. */
  gap: v.optional(MarginText),
  /** How the corners of the boxes are joined. By rabbets when absent. */
  joint: v.optional(v.picklist(['rabbet', 'dado', 'screws', 'pocket-screws'])),
  /** Whether the bottoms stand in grooves (as when absent) or are laid under the boxes. */
  bottomFitting: v.optional(v.picklist(['groove', 'applied'])),
  /**
   * What carries them: a pair of the rack (as when absent); strips on the uprights that run in grooves of the boxes; or what
   * is below, with a strip under the middle of the drawer that keeps it straight.
   */
  carriedBy: v.optional(v.picklist(['runners', 'wooden-runners', 'centre-runner'])),
  /** A pair of runners of the rack; the longest that goes in when absent. */
  runner: v.optional(Id),
  /** The lot of strips that wooden runners, or a centre runner and its guides, are cut from. */
  runnerStrip: v.optional(Id),
  /** Fronts with one word here are cut from one strip in their order, those of several openings too. */
  oneStrip: v.optional(Name),
  /** What lies in each. */
  load: v.optional(MassText),
});
export type DrawersRecord = v.InferOutput<typeof DrawersRecord>;
