import * as v from 'valibot';
import { Id, MarginFormula } from '../typed.ts';

/**
 * Where something stands on a panel: which panel of a case, where it belongs to one; its middle from a side of the
 * panel, or of the opening it is `in`; half way where neither side is named.
 */
export const onPanel = {
  panel: v.optional(v.picklist(['left-side', 'right-side', 'bottom', 'lid'])),
  in: v.optional(Id),
  fromLeft: v.optional(MarginFormula),
  fromRight: v.optional(MarginFormula),
  fromFront: v.optional(MarginFormula),
  fromBack: v.optional(MarginFormula),
  fromBelow: v.optional(MarginFormula),
  fromAbove: v.optional(MarginFormula),
};

/** The two sides that a place along each axis of the piece may be measured from. */
export const FROM_SIDES = [
  ['fromLeft', 'fromRight'],
  ['fromFront', 'fromBack'],
  ['fromBelow', 'fromAbove'],
] as const;
