import * as v from 'valibot';
import { OpeningSizeText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A clear space in a case, or a share of a larger one. The case's first opening is all of its inside. */
export const OpeningRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('opening'),
  /** Its share of the parent opening: a length, `equal` (the default) or `2 shares`. */
  size: v.optional(OpeningSizeText),
  /**
   * `across`: its openings stand side by side, parted by uprights. `down`: one above the other, lowest first. `back`: one
   * behind the other, the foremost first, parted by panels parallel to the back.
   */
  split: v.optional(v.picklist(['across', 'down', 'back'])),
});
export type OpeningRecord = v.InferOutput<typeof OpeningRecord>;
