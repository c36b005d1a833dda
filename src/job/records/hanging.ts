import * as v from 'valibot';
import { Id, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** What a case without a base hangs on the wall by: rails under the top, at the back, or a bevelled cleat. */
export const HangingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('hanging'),
  board: Id,
  /**
   * `rails`, as when absent: they are screwed to the wall. `cleat`: a strip with a slanting edge behind the back hooks over
   * another that is screwed to the wall.
   */
  by: v.optional(v.picklist(['rails', 'cleat'])),
  /** How high the rails or strips are; by the trade's figure when absent. */
  height: v.optional(SizeFormula),
});
export type HangingRecord = v.InferOutput<typeof HangingRecord>;
