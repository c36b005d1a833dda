import * as v from 'valibot';
import { Id, MarginFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Thin panels that stand upright in dados of what is below and above an opening, equally spaced: a place for trays, boards, papers. */
export const TraysRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('trays'),
  /** The lot they are cut from. */
  board: Id,
  /** How many panels; there is one place more. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40))),
  /** How far their front stays behind the case's front. */
  setback: v.optional(MarginFormula),
});
export type TraysRecord = v.InferOutput<typeof TraysRecord>;
