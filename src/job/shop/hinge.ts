import * as v from 'valibot';
import { Id, Name, SizeText } from '../typed.ts';

const hingeFields = {
  id: Id,
  name: v.optional(Name),
  /** A countersunk screw of the rack that it is fixed with. */
  screw: Id,
  have: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000))),
  price: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
};

/** A concealed hinge: a cup let into the door’s back and a plate screwed to the upright. */
const CupHinge = v.strictObject({
  ...hingeFields,
  kind: v.literal('cup'),
  /** What its arm is bent for: a door over all of an upright’s edge, over half of it, or inside the opening. */
  suits: v.picklist(['overlay', 'half-overlay', 'inset']),
  /** Diameter and depth of the hole for the cup, and how far its rim stays from the door’s edge. */
  cup: SizeText,
  deep: SizeText,
  edge: SizeText,
  /** The two screws of the cup: how far apart, and how far behind its middle. */
  cupScrews: SizeText,
  cupScrewsBehind: SizeText,
  /** The two screws of the plate: how far apart, and how far behind the front edge of the upright. */
  plateScrews: SizeText,
  plateBehind: SizeText,
});

/** A plain hinge of two leaves, let into the door’s edge and the upright. */
const ButtHinge = v.strictObject({
  ...hingeFields,
  kind: v.literal('butt'),
  /** Length and width of a leaf, and how thick it is. */
  length: SizeText,
  width: SizeText,
  leaf: SizeText,
  /** Screws in one leaf. */
  screws: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(10)),
});

export const Hinge = v.variant('kind', [CupHinge, ButtHinge]);
export type Hinge = v.InferOutput<typeof Hinge>;
export type HingeOf<K extends Hinge['kind']> = Extract<Hinge, { kind: K }>;
