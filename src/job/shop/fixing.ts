import * as v from 'valibot';
import { Id, MassText, Name, SizeText } from '../typed.ts';

const fixingFields = {
  id: Id,
  name: v.optional(Name),
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
};

/** A round piece of wood, grain across, that is glued over a sunk screw and trimmed flush. */
const Plug = v.strictObject({
  ...fixingFields,
  kind: v.literal('plug'),
  diameter: SizeText,
  length: SizeText,
});

/** A round wooden pin, glued half into either part. */
const Dowel = v.strictObject({
  ...fixingFields,
  kind: v.literal('dowel'),
  diameter: SizeText,
  length: SizeText,
});

/** A flat oval of pressed wood, glued half into either part, that swells in its slots. */
const Biscuit = v.strictObject({
  ...fixingFields,
  kind: v.literal('biscuit'),
  /** Along the joint, and across it: half of the width goes into either part. */
  length: SizeText,
  width: SizeText,
  thickness: SizeText,
});

/** A flat ring under the head of a screw that stands in a wide hole. */
const Washer = v.strictObject({
  ...fixingFields,
  kind: v.literal('washer'),
  /** Of its hole. */
  diameter: SizeText,
  /** Over all. */
  width: SizeText,
});

/** A foot on a thread that is turned longer or shorter where a piece stands, in a sleeve let into the wood above it. */
const Leveller = v.strictObject({
  ...fixingFields,
  kind: v.literal('leveller'),
  /** Of the hole for its sleeve, and how deep that is. */
  diameter: SizeText,
  deep: SizeText,
  /** Of its foot. */
  width: SizeText,
  /** From the floor to the wood, turned right in and as far out as it may be. */
  lowest: SizeText,
  highest: SizeText,
  /** What one carries, where its maker says so. */
  carries: v.optional(MassText),
});

/** Fixings of one size: what joints are made or finished with besides screws, and what a piece stands on. */
export const Fixing = v.variant('kind', [Plug, Dowel, Biscuit, Washer, Leveller]);
export type Fixing = v.InferOutput<typeof Fixing>;
export type FixingOf<K extends Fixing['kind']> = Extract<Fixing, { kind: K }>;
