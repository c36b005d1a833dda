import * as v from 'valibot';
import { Id } from '../typed.ts';
import { baseFields } from './base-fields.ts';

const Side = v.picklist(['left', 'right', 'upper', 'lower']);

/**
 * Solid strips or veneer tape on edges: the front edges of a case's panels or of an opening's loose shelves; or round a
 * door or a drawer's front, whose size stays as asked.
 */
export const EdgingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('edging'),
  /** A lot of strips; its thickness is what the edging adds. */
  strip: Id,
  /** Of a door or of drawers: which edges, seen from the front. All four when absent. */
  sides: v.optional(v.pipe(v.array(Side), v.minLength(1, 'name a side, or none at all for all of them'))),
});
export type EdgingRecord = v.InferOutput<typeof EdgingRecord>;
