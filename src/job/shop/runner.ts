import * as v from 'valibot';
import { Id, MassText, Name, SizeText } from '../typed.ts';

/** A pair of runners that are screwed to the sides of a drawer and of its opening. */
export const Runner = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** As long as the box of the drawer is made. */
  length: SizeText,
  /** What each takes between drawer and case. */
  thickness: SizeText,
  /** How high its profile is. */
  height: SizeText,
  /** Its screws, by how far each is behind its front end: on the case and on the drawer. */
  caseScrews: v.pipe(v.array(SizeText), v.minLength(2, 'a runner has two screws at least')),
  drawerScrews: v.pipe(v.array(SizeText), v.minLength(2, 'a runner has two screws at least')),
  /** A countersunk screw of the rack that it is fixed with. */
  screw: Id,
  /** How far the drawer comes out; three quarters of its length when absent. */
  travel: v.optional(SizeText),
  /** What a pair carries. */
  carries: v.optional(MassText),
  /** Pairs on the rack, and the price of one. */
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
});
export type Runner = v.InferOutput<typeof Runner>;
