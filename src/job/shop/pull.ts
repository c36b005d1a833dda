import * as v from 'valibot';
import { Id, Name, SizeText } from '../typed.ts';

/** A bought pull or knob, with threaded holes for machine screws. */
export const Pull = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** Between the middles of its two holes, measured on it; a knob with one hole has none. */
  holes: v.optional(SizeText),
  /** Diameter of its thread, and how deep a screw goes into it. */
  thread: SizeText,
  deep: SizeText,
  /** How long it is all over. */
  length: SizeText,
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
});
export type Pull = v.InferOutput<typeof Pull>;
