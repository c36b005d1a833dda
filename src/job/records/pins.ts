import * as v from 'valibot';
import { Id, MarginFormula, MassText, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Loose shelves of an opening, and the rows of holes whose pins they lie on. */
export const PinsRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('pins'),
  /** The lot the shelves are cut from; the case's when absent. */
  board: v.optional(Id),
  /** How many shelves. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40))),
  /** A pin of the rack; the first there when absent. */
  pin: v.optional(Id),
  /** From one hole of a row to the next. */
  pitch: v.optional(SizeFormula),
  /** From the front and from the back of the opening to the rows. */
  front: v.optional(SizeFormula),
  back: v.optional(SizeFormula),
  /** Clear height below the lowest hole and above the highest. */
  below: v.optional(SizeFormula),
  above: v.optional(SizeFormula),
  /** How much shorter a shelf is than its opening, at either end. */
  clearance: v.optional(MarginFormula),
  /** How far a shelf's front stays behind the opening's. */
  setback: v.optional(MarginFormula),
  /** What stands on each. */
  load: v.optional(MassText),
});
export type PinsRecord = v.InferOutput<typeof PinsRecord>;
