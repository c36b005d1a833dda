import * as v from 'valibot';
import { MarginFormula, MassText, Name, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Something that is to stand in an opening; several of an opening stand side by side. */
export const ThingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('thing'),
  name: Name,
  /** As it stands, seen from the front. */
  width: SizeFormula,
  height: SizeFormula,
  depth: SizeFormula,
  /** How many alike; one when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(500))),
  /** What one of them weighs. */
  mass: v.optional(MassText),
  /** What one of them gives off as heat, W. */
  heat: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(5000))),
  /** Free room on either side, between them, and above. */
  clear: v.optional(MarginFormula),
  /** Room behind for what must reach it: a cable and its plug, a hose. */
  behind: v.optional(MarginFormula),
});
export type ThingRecord = v.InferOutput<typeof ThingRecord>;
