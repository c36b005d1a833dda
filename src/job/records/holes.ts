import * as v from 'valibot';
import { Id, Name, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';
import { onPanel } from './on-panel.ts';

/**
 * Round holes in a row, for pegs, hooks, screws or whatever the maker says. Along the row its place is measured from one
 * side (the hole nearest to it, or the row's middle), from both (the first and the last, equally spaced between), or from
 * neither (about the middle).
 */
export const HolesRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('holes'),
  ...onPanel,
  /** What they are for, in the maker's words. */
  purpose: v.optional(Name),
  diameter: SizeFormula,
  /** How deep they are bored from `face`; right through when absent. */
  depth: v.optional(SizeFormula),
  /** Which way the face looks that they are bored from, where they don't go through. */
  face: v.optional(v.picklist(['left', 'right', 'front', 'back', 'below', 'above'])),
  /** How many. One when absent. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(200))),
  /** Which way the row runs: from left to right (as when absent, where the panel has a width), upward, or backward. */
  lay: v.optional(v.picklist(['across', 'up', 'back'])),
  /** From the middle of a hole to that of the next. */
  apart: v.optional(SizeFormula),
  /** What a place along the row is measured to: the middle of the row, and not the hole nearest to that side. */
  measured: v.optional(v.literal('middle')),
  /** An opening, a shelf or a divider: where no side is named, the row stands about its middle, not the panel's. */
  about: v.optional(Id),
  /** Set to have the same holes, mirrored, in the case's other side. */
  mirror: v.optional(v.boolean()),
});
export type HolesRecord = v.InferOutput<typeof HolesRecord>;
