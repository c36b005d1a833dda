import * as v from 'valibot';
import { Id, MarginText, Name, SizeText } from '../typed.ts';
import { Fixing } from './fixing.ts';
import { Hinge } from './hinge.ts';
import { Pin } from './pin.ts';
import { Pull } from './pull.ts';
import { Runner } from './runner.ts';
import { Stay } from './stay.ts';
import { AdhesiveLot, FinishLot } from './supplies.ts';

const price = v.pipe(v.number(), v.finite(), v.minValue(0));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100000));

/** A place that no part may touch: a void, a patch, a dent, a knot. Measured as the sheet lies to be cut, from its near left corner. */
export const Flaw = v.strictObject({
  id: Id,
  name: v.optional(Name),
  x: MarginText,
  /** Absent on strips, as is the width. */
  y: v.optional(MarginText),
  length: SizeText,
  width: v.optional(SizeText),
});
export type Flaw = v.InferOutput<typeof Flaw>;

/** Sheets, offcuts or strips of one size: on the rack, to be bought, or both. */
export const Stock = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** Along the grain. */
  length: SizeText,
  /** Across the grain; absent on strips, whose width is their lot's. */
  width: v.optional(SizeText),
  /** How many are on the rack. */
  have: v.optional(count),
  /** What one costs to buy; absent when none can be bought. */
  price: v.optional(price),
  /** What one on the rack is worth to the maker when it is used up; next to nothing when absent. */
  value: v.optional(price),
  /** Taken off every side of it first, where that is not what is taken off the lot's sheets. */
  trim: v.optional(MarginText),
  /** Which faces of a sheet are good enough to be seen, where not both are. */
  goodFaces: v.optional(v.picklist(['one', 'none'])),
  /** Of the one on the rack. */
  flaws: v.optional(v.array(Flaw)),
  /** Set where it has no grain that parts must follow. */
  grain: v.optional(v.picklist(['free'])),
});
export type Stock = v.InferOutput<typeof Stock>;

/** Stock of one material and one measured thickness. */
export const Lot = v.strictObject({
  id: Id,
  name: Name,
  /** A row of the material tables: `birch-plywood`, `ash-white`. */
  material: Id,
  form: v.picklist(['sheet', 'strip']),
  /** What it is sold as. */
  nominal: SizeText,
  /** What it measures; the nominal size counts until it has been measured. */
  thickness: v.optional(SizeText),
  /** Width of a strip's section. */
  width: v.optional(SizeText),
  /**
   * Of strips: veneer tape for edges, cut with scissors and ironed on. Whether it comes with glue of its own, or gets
   * wood glue that is left to dry first.
   */
  tape: v.optional(v.picklist(['iron-on', 'glue'])),
  /** Of sheets: how thick the face veneer is, which sanding must not go through. */
  veneer: v.optional(SizeText),
  /** Whether parts must follow the grain. */
  grain: v.optional(v.picklist(['along', 'free'])),
  /** Taken off every side of a sheet before parts are cut, kerf included. */
  trim: v.optional(MarginText),
  stock: v.pipe(v.array(Stock), v.minLength(1, 'a lot needs at least one size of stock')),
});
export type Lot = v.InferOutput<typeof Lot>;

/** Screws of one size. */
export const Screw = v.strictObject({
  id: Id,
  name: v.optional(Name),
  kind: v.picklist(['pocket', 'countersunk', 'machine']),
  length: SizeText,
  diameter: SizeText,
  /** Diameter of the head. */
  head: SizeText,
  have: v.optional(count),
  price: v.optional(price),
});
export type Screw = v.InferOutput<typeof Screw>;

export const Bit = v.strictObject({
  id: Id,
  kind: v.picklist([
    'twist',
    'countersink',
    'pocket',
    'straight',
    'rabbet',
    'flush-trim',
    'forstner',
    'hole-saw',
  ]),
  diameter: SizeText,
});
export type Bit = v.InferOutput<typeof Bit>;

export const Rack = v.strictObject({
  lots: v.array(Lot),
  screws: v.array(Screw),
  bits: v.array(Bit),
  hinges: v.optional(v.array(Hinge)),
  fixings: v.optional(v.array(Fixing)),
  adhesives: v.array(AdhesiveLot),
  finishes: v.array(FinishLot),
  pins: v.optional(v.array(Pin)),
  runners: v.optional(v.array(Runner)),
  pulls: v.optional(v.array(Pull)),
  stays: v.optional(v.array(Stay)),
});
export type Rack = v.InferOutput<typeof Rack>;
