import * as v from 'valibot';
import { Id, Name, SizeFormula } from '../typed.ts';

/** The piece as a whole. Its sizes are those of the bounding box with top, edging and doors, without handles. */
export const PieceRecord = v.strictObject({
  kind: v.literal('piece'),
  id: Id,
  name: Name,
  width: SizeFormula,
  height: SizeFormula,
  depth: SizeFormula,
  /** The room it has, where that is known: a snag is raised when the piece is larger. */
  spaceWidth: v.optional(SizeFormula),
  spaceHeight: v.optional(SizeFormula),
  spaceDepth: v.optional(SizeFormula),
  /** The skirting of the wall behind it, where there is one. */
  skirtingHeight: v.optional(SizeFormula),
  skirtingDepth: v.optional(SizeFormula),
});
export type PieceRecord = v.InferOutput<typeof PieceRecord>;
