import * as v from 'valibot';
import { Id } from '../typed.ts';
import { baseFields } from './base-fields.ts';
import { onFront } from './handle.ts';

/** Bought pulls or knobs of the rack, each held by machine screws from behind its door or drawer front. */
export const PullRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('pull'),
  ...onFront,
  /** A pull of the rack; the first there when absent. */
  pull: v.optional(Id),
});
export type PullRecord = v.InferOutput<typeof PullRecord>;
