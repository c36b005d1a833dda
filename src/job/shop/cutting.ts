import * as v from 'valibot';
import { SizeText } from '../typed.ts';

const few = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));

/** How stock is to be cut up in this shop. What is absent sets no limit. */
export const Cutting = v.strictObject({
  /** What counts in a cutting plan, the most important first. */
  objectives: v.optional(
    v.pipe(
      v.array(v.picklist(['cost', 'leftover', 'settings', 'cuts', 'alike'])),
      v.check((list) => new Set(list).size === list.length, 'each objective is named once'),
    ),
  ),
  /** How many times cuts may change between along and across, from the sheet to a part. */
  stages: v.optional(few(1, 20)),
  /** What the first cut of a sheet is: along the grain or across it. */
  first: v.optional(v.picklist(['rip', 'crosscut'])),
  /** Of the two sides of a cut one is at least so wide, to hold it by. */
  hold: v.optional(SizeText),
  /** After so many cuts, whatever is cut again can be carried by the strongest of the people. */
  carryAfter: v.optional(few(1, 20)),
  /** What the yard cuts where stock is bought, and what it travels home in. */
  yard: v.optional(
    v.strictObject({
      /** How many straight rough cuts it makes in a sheet; none when absent. */
      cuts: v.optional(few(0, 20)),
      /** How far beside the line a rough cut stays, so that nothing is lost however it wanders. */
      over: v.optional(SizeText),
      /** The room for sheets in the vehicle. */
      vehicle: v.strictObject({ length: SizeText, width: SizeText }),
    }),
  ),
  /** The least sizes that are worth keeping on the rack. */
  wanted: v.optional(
    v.pipe(v.array(v.strictObject({ length: SizeText, width: SizeText })), v.minLength(1, 'name a size')),
  ),
});
export type Cutting = v.InferOutput<typeof Cutting>;
