import * as v from 'valibot';
import { Id, MassText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A box of panels with one opening. The sides run through; bottom, dividers and shelves stand between. */
export const CaseRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('case'),
  /** The lot its panels are cut from. */
  board: Id,
  /** What stands on its bottom, all of it together. */
  load: v.optional(MassText),
});
export type CaseRecord = v.InferOutput<typeof CaseRecord>;
