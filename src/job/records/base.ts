import * as v from 'valibot';
import { Id, MarginFormula, SizeFormula } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/** A frame of strips on edge, mitred at its corners, that lifts the case off the floor. */
export const BaseRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('base'),
  board: Id,
  height: SizeFormula,
  /** How far it stays inside the case's front and sides. */
  setback: v.optional(MarginFormula),
  setbackBack: v.optional(MarginFormula),
});
export type BaseRecord = v.InferOutput<typeof BaseRecord>;
