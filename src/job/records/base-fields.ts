import * as v from 'valibot';
import { Id } from '../typed.ts';

/** What every record has: its id, what it belongs to, and where it comes among its brothers. */
export const baseFields = {
  id: Id,
  /** The record this one belongs to; only the piece has none. */
  parent: Id,
  /** Brothers are sorted by this, then by their place in the file. */
  order: v.optional(v.pipe(v.number(), v.finite())),
};
