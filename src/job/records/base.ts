import * as v from 'valibot';
import { Id, MarginFormula, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/**
 * What lifts the case off the floor: a mitred frame of strips on edge, a kick board between the sides, feet, legs with
 * aprons, or levellers. */
export const BaseRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('base'),
  /** A mitred frame when absent. `toe-kick`: the sides run to the floor, with a board set back between them. */
  form: v.optional(v.picklist(['frame', 'toe-kick', 'feet', 'legs', 'levellers'])),
  /** What a frame, a kick board or aprons are cut from. */
  board: v.optional(Id),
  /** A lot of strips that feet are cut from, its width their height; or legs. */
  strip: v.optional(Id),
  /** A leveller of the rack; the first there when absent. */
  leveller: v.optional(Id),
  /** Of a frame, a kick board, legs, or levellers, which are turned right in when absent. */
  height: v.optional(SizeFormula),
  /** How high the aprons between legs are. */
  apron: v.optional(SizeFormula),
  /** How far it stays inside the case's front and sides. */
  setback: v.optional(MarginFormula),
  setbackBack: v.optional(MarginFormula),
});
export type BaseRecord = v.InferOutput<typeof BaseRecord>;
