import * as v from 'valibot';
import { Id, MassText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** The panel between two openings of a split: an upright, or a fixed shelf right across. Comes with the split. */
export const DividerRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('divider'),
  /** The lot it is cut from; the case's when absent. */
  board: v.optional(Id),
  /** What stands on it, where it lies flat. */
  load: v.optional(MassText),
});
export type DividerRecord = v.InferOutput<typeof DividerRecord>;
