import * as v from 'valibot';
import { Id, MarginFormula, OpeningSizeText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A strip that closes the gap between the end of a row and the wall beside it, cut wider and scribed to that wall. */
export const FillerRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('filler'),
  board: Id,
  /** How wide the gap is, as cases have their size along the row. */
  size: v.optional(OpeningSizeText),
  /** How much wider it is cut, to be scribed away; by the trade’s figure when absent. */
  scribe: v.optional(MarginFormula),
  /** How far behind the front of the case’s panels it stands. */
  setback: v.optional(MarginFormula),
});
export type FillerRecord = v.InferOutput<typeof FillerRecord>;
