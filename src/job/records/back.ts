import * as v from 'valibot';
import { Id } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** The back panel: let into rabbets of the sides, or applied over the case's back edges. */
export const BackRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('back'),
  board: Id,
  fitting: v.picklist(['rabbet', 'applied']),
});
export type BackRecord = v.InferOutput<typeof BackRecord>;
