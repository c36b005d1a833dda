import * as v from 'valibot';
import { PowerText, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';
import { onPanel } from './on-panel.ts';

/** Openings in a panel for air: slots side by side, or a grid of holes; their block has its middle where it is placed. */
export const VentRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('vent'),
  ...onPanel,
  form: v.picklist(['slots', 'holes']),
  /** What gives off heat behind it, in watts; how many openings there are follows from it. */
  heat: v.optional(PowerText),
  /** From the middle of the low vent to that of the high one; half the clear height when absent. */
  apart: v.optional(SizeFormula),
  /** How many openings; as many as the heat asks for when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(300))),
  /** How many rows; as few as the width allows when absent. */
  rows: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40))),
  /** Length of a slot, or diameter of a hole. */
  opening: v.optional(SizeFormula),
});
export type VentRecord = v.InferOutput<typeof VentRecord>;
