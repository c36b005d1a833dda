import * as v from 'valibot';
import { Id, MarginFormula, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** Where a handle or a pull stands on the door or drawer front that it belongs to; half way where nothing is said. */
export const onFront = {
  /** Which way it runs: upward on doors, across on drawers, when absent. */
  lay: v.optional(v.picklist(['across', 'up'])),
  /** From the edge of the door that opens to its middle. */
  fromEdge: v.optional(SizeFormula),
  /** From the lower or the upper edge to its middle. */
  fromBelow: v.optional(MarginFormula),
  fromAbove: v.optional(MarginFormula),
};

/** Handles made in the shop: lengths of a strip, each screwed on from behind its door or drawer front. */
export const HandleRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('handle'),
  ...onFront,
  /** A lot of strips; it lies flat on the front, and stands out by its thickness. */
  strip: Id,
  /** How long each is. */
  length: v.optional(SizeFormula),
});
export type HandleRecord = v.InferOutput<typeof HandleRecord>;
