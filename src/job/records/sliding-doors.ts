import * as v from 'valibot';
import { Id, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Doors that slide past one another in grooves of what is below and above them. */
export const SlidingDoorsRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('sliding-doors'),
  board: Id,
  /** The openings they stand before; several must be neighbours of one split. */
  over: v.pipe(v.array(Id), v.minLength(1, 'doors stand before at least one opening')),
  /** How many doors. Two when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(2), v.maxValue(8))),
  /** How many grooves they run in, one behind the other. Two when absent. */
  tracks: v.optional(v.picklist([2, 3])),
  /**
   * `all`: together they close everything, the usual way. `each`: a door closes one opening, and any as many openings
   * as there are doors can be closed at once.
   */
  closes: v.optional(v.picklist(['all', 'each'])),
  /** How far doors lap where they pass; with `each`, how far one laps beyond its opening on both sides. */
  overlap: v.optional(SizeFormula),
  /** Air between doors that pass. */
  gap: v.optional(SizeFormula),
  /** How far the first groove stands behind the front of the panels. */
  setIn: v.optional(SizeFormula),
  /** How thick the tongue is that runs in the grooves; the whole door when absent. */
  tongue: v.optional(SizeFormula),
  /** Depth of the grooves above and below, and how far a door still stands in the upper one when it is down. */
  upperGroove: v.optional(SizeFormula),
  lowerGroove: v.optional(SizeFormula),
  engagement: v.optional(SizeFormula),
  /** Diameter of a recess to push each door by; none when absent. */
  fingerHole: v.optional(SizeFormula),
});
export type SlidingDoorsRecord = v.InferOutput<typeof SlidingDoorsRecord>;
