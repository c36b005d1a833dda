import * as v from 'valibot';
import { Id, MarginFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** The back panel: let into rabbets or grooves of the sides, or applied over the case's back edges; or that of one bay, let in. */
export const BackRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('back'),
  board: Id,
  fitting: v.picklist(['rabbet', 'groove', 'applied']),
  /** How far behind the back the sides run on, where it stands in a groove. */
  setIn: v.optional(MarginFormula),
});
export type BackRecord = v.InferOutput<typeof BackRecord>;
