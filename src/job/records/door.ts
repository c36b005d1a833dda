import * as v from 'valibot';
import { Id, MarginText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A hinged door, or a pair of them, before one opening or several that lie side by side or one above the other. */
export const DoorRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('door'),
  board: Id,
  /** The openings it closes; several must be neighbours of one split. */
  over: v.pipe(v.array(Id), v.minLength(1, 'a door closes at least one opening')),
  /** One door, or two that meet in the middle. One when absent. */
  count: v.optional(v.picklist([1, 2])),
  /** `inset`: inside the opening, level with the case’s front. `overlay`: before the case’s front. */
  hang: v.picklist(['inset', 'overlay']),
  /** The side a single door hangs on, seen from the front: left when absent. Hung `above` it lifts up, hung `below` it drops down. */
  hand: v.optional(v.picklist(['left', 'right', 'above', 'below'])),
  /** A stay of the rack that holds one that opens upward or downward; the first that does when absent. */
  stay: v.optional(Id),
  /** The gap round it; by the trade’s figures when absent. */
  gap: v.optional(MarginText),
  /** A hinge of the rack; the first that suits when absent. */
  hinge: v.optional(Id),
});
export type DoorRecord = v.InferOutput<typeof DoorRecord>;
