import * as v from 'valibot';
import { OpeningSizeText, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** What a case or a group says of its place in the group that it stands in. */
export const placeFields = {
  /** Its outer size along the group, as openings have it: a length, `equal` (the default) or `2 shares`. */
  size: v.optional(OpeningSizeText),
  /** Its outer height, if it is lower than others that stand beside it. */
  height: v.optional(SizeFormula),
  /** Its outer depth, if it is shallower than others; its back stands level with theirs. */
  depth: v.optional(SizeFormula),
};

/** Cases that stand together, screwed to one another; a group may stand in a group. */
export const GroupRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('group'),
  /** `across`: side by side, from the left. `up`: one on the other, from the floor. */
  lay: v.picklist(['across', 'up']),
  ...placeFields,
});
export type GroupRecord = v.InferOutput<typeof GroupRecord>;
