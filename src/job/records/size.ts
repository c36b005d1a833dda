import * as v from 'valibot';
import { Id, MarginFormula } from '../typed.ts';

/** A size with a name of the maker's own, for formulas to use: `gap`, `side`. */
export const SizeRecord = v.strictObject({
  id: Id,
  kind: v.literal('size'),
  value: MarginFormula,
});
export type SizeRecord = v.InferOutput<typeof SizeRecord>;
