import * as v from 'valibot';
import { Id, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Rails under the top, at the back, by which a case without a base is screwed to the wall. */
export const HangingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('hanging'),
  board: Id,
  /** How high the rails are; by the trade's figure when absent. */
  height: v.optional(SizeFormula),
});
export type HangingRecord = v.InferOutput<typeof HangingRecord>;
