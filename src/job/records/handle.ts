import * as v from 'valibot';
import { Id, MarginFormula, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/**
 * Where handles or pulls stand on the door or drawer front that they belong to; half way where nothing is said. The words
 * are those of rows of holes. Along a row a place is measured from one side (to the nearest, or to the row's middle), from
 * both (to the first and the last, equally spaced between), or from neither: the row then stands about the middle, or each
 * in the middle of its own share of the front. Of a pair of doors the right one mirrors the left.
 */
export const onFront = {
  /** Which way each runs: upward on doors, across on drawers, when absent. */
  lay: v.optional(v.picklist(['across', 'up'])),
  /** How many stand on each front. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(6))),
  /** Which way several stand in a row: along the edge that opens, across on drawers, when absent. */
  row: v.optional(v.picklist(['across', 'up'])),
  /** From the middle of one to that of the next. */
  apart: v.optional(SizeFormula),
  /** What a place along the row is measured to: the middle of the row, and not the one nearest to that side. */
  measured: v.optional(v.literal('middle')),
  /** An opening, a shelf or a divider: along their row they stand about its middle, not the front's. */
  about: v.optional(Id),
  /** From the edge of the door that opens to its middle. */
  fromEdge: v.optional(SizeFormula),
  /** From a side, or from the lower or the upper edge, to its middle. */
  fromLeft: v.optional(MarginFormula),
  fromRight: v.optional(MarginFormula),
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
