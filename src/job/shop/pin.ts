import * as v from 'valibot';
import { Id, MarginText, MassText, Name, SizeText } from '../typed.ts';

/** Pins of one size that loose shelves lie on. */
export const Pin = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** Diameter and depth of the hole that it needs. */
  diameter: SizeText,
  deep: SizeText,
  /** How far it stands out of the wood. */
  stands: SizeText,
  /** How far above the middle of its hole the shelf lies; half its diameter when absent. */
  above: v.optional(MarginText),
  /** What one pin carries, where its maker says so. */
  carries: v.optional(MassText),
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
});
export type Pin = v.InferOutput<typeof Pin>;
