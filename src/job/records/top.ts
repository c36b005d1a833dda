import * as v from 'valibot';
import { Id, MarginFormula, MassText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/**
 * A top that lies on the case and is screwed to its uprights from inside; or, belonging to a group, one over all its cases,
 * screwed up through their lids.
 */
export const TopRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('top'),
  board: Id,
  /** How far it stands out beyond the case, its edging included. */
  overhangFront: v.optional(MarginFormula),
  overhangSides: v.optional(MarginFormula),
  overhangBack: v.optional(MarginFormula),
  /** A lot of solid strips to edge it with, mitred at the corners. */
  edging: v.optional(Id),
  edgedSides: v.optional(v.picklist(['front-and-sides', 'all-round'])),
  load: v.optional(MassText),
});
export type TopRecord = v.InferOutput<typeof TopRecord>;
