import * as v from 'valibot';
import { Id, Name } from '../typed.ts';

const minutes = v.pipe(v.number(), v.finite(), v.minValue(1), v.maxValue(100_000));
const hours = v.pipe(v.number(), v.finite(), v.minValue(0.1), v.maxValue(2000));
const price = v.pipe(v.number(), v.finite(), v.minValue(0));

/** Glue in the cupboard, by a row of the tables. What its label says comes before the table. */
export const AdhesiveLot = v.strictObject({
  id: Id,
  name: v.optional(Name),
  material: Id,
  /** Price of a kilogram. */
  price: v.optional(price),
  label: v.optional(
    v.strictObject({
      /** From spreading to closing the joint. */
      openMinutes: v.optional(minutes),
      /** From spreading to full pressure. */
      assemblyMinutes: v.optional(minutes),
      clampMinutes: v.optional(minutes),
      /** Until the joint may be loaded. */
      cureHours: v.optional(hours),
    }),
  ),
});
export type AdhesiveLot = v.InferOutput<typeof AdhesiveLot>;

/** Finish in the cupboard, by a row of the tables. What its label says comes before the table. */
export const FinishLot = v.strictObject({
  id: Id,
  name: v.optional(Name),
  material: Id,
  /** Price of a litre. */
  price: v.optional(price),
  label: v.optional(
    v.strictObject({
      coats: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(6))),
      /** Square metres that a litre covers, one coat. */
      coverageM2PerL: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0.5), v.maxValue(100))),
      recoatHours: v.optional(hours),
      /** Until it may be used with care. */
      readyHours: v.optional(hours),
    }),
  ),
});
export type FinishLot = v.InferOutput<typeof FinishLot>;
