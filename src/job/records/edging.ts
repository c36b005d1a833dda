import * as v from 'valibot';
import { Id } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Solid strips or veneer tape on the front edges of the case's panels, or of an opening's loose shelves. */
export const EdgingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('edging'),
  /** A lot of strips; its thickness is what the edging adds. */
  strip: Id,
});
export type EdgingRecord = v.InferOutput<typeof EdgingRecord>;
