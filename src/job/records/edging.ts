import * as v from 'valibot';
import { Id } from '../typed.ts';
import { baseFields } from './base-fields.ts';

const Side = v.picklist(['front', 'left', 'right', 'upper', 'lower']);

/**
 * Solid strips or veneer tape on edges: the front edges of a case's panels and the ends of those that show theirs, or the front
 * edges of an opening's loose shelves; or round a door or a drawer's front. Sizes stay as asked.
 */
export const EdgingRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('edging'),
  /** A lot of strips; its thickness is what the edging adds. */
  strip: Id,
  /**
   * Of a door or of drawers: which edges, seen from the front; all four when absent. Of a case: `front` alone when absent;
   * `left` and `right` are ends of a bottom or a lid that runs through there, `upper` those of sides beside a lid.
   */
  sides: v.optional(v.pipe(v.array(Side), v.minLength(1, '“sides” names none'))),
});
export type EdgingRecord = v.InferOutput<typeof EdgingRecord>;
