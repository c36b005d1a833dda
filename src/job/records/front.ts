import * as v from 'valibot';
import { Id, MarginFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A fixed panel that closes a case in front, under a hinged top: what makes a chest of it. */
export const FrontRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('front'),
  /** The lot it is cut from; the case's when absent. */
  board: v.optional(Id),
  /** What is left open between its upper edge and the lid, for fingers and for air. */
  gap: v.optional(MarginFormula),
});
export type FrontRecord = v.InferOutput<typeof FrontRecord>;
