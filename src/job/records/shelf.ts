import * as v from 'valibot';
import { ROW_IDS } from '../../materials/index.ts';
import { Id, MarginFormula, MassText, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Fixed shelves in an opening: one at a height, or several that part it equally. */
export const ShelfRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('shelf'),
  board: v.optional(Id),
  /** How many, equally spaced. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40))),
  /** Clear height below a single shelf; equal spacing when absent. */
  at: v.optional(SizeFormula),
  /** What is to stand in a row below it and on it: they are then spaced by that, from below, and the rest is left above. */
  rowOf: v.optional(v.picklist(ROW_IDS)),
  /** How far its front stays behind the case's front. */
  setback: v.optional(MarginFormula),
  /** What stands on each. */
  load: v.optional(MassText),
});
export type ShelfRecord = v.InferOutput<typeof ShelfRecord>;
