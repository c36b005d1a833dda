import * as v from 'valibot';
import { Id, MomentText, Name } from '../typed.ts';

/** Something that holds a lid open in every position: a friction hinge arm, a spring stay. */
export const Stay = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** The moment about the lid's hinges that one holds: `8 N m`, `60 in lb`. */
  holds: MomentText,
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
});
export type Stay = v.InferOutput<typeof Stay>;
