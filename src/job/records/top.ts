import * as v from 'valibot';
import { Id, MarginFormula, MassText } from '../typed.ts';
import { baseFields } from './base-fields.ts';

/**
 * A top that lies on the case and is screwed to its uprights from inside; or, belonging to a group, one over all its cases,
 * screwed up through their lids.
 */
export const TopRecord = v.strictObject({
  ...baseFields,
  kind: v.literal('top'),
  board: Id,
  /**
   * `applied`, as when absent: it lies on the case and may stand out. `flush`: it lies on the case and comes level with it all
   * round. `inset`: between the sides, as a lid of a board of its own.
   */
  fit: v.optional(v.picklist(['applied', 'flush', 'inset'])),
  /** How far it stands out beyond the case, its edging included. */
  overhangFront: v.optional(MarginFormula),
  overhangSides: v.optional(MarginFormula),
  overhangBack: v.optional(MarginFormula),
  /** A lot of solid strips to edge it with, mitred at the corners. */
  edging: v.optional(Id),
  edgedSides: v.optional(v.picklist(['front', 'front-and-sides', 'all-round'])),
  /**
   * Of solid wood, how it can move on what carries it: its screws stand in wide `holes`, as when absent, or in `slots`
   * across the grain; or it lies on the uprights, where wooden `buttons` hold it behind one screw in front.
   */
  moves: v.optional(v.picklist(['holes', 'slots', 'buttons'])),
  /** A lot of strips to make the buttons of. */
  buttons: v.optional(Id),
  /**
   * Of a top over a row that fillers close to its walls: how much longer it is cut at each end where one stands, to be
   * scribed to the wall there.
   */
  scribe: v.optional(MarginFormula),
  load: v.optional(MassText),
  /** Set to hinge it to the back, as a lid. */
  hinged: v.optional(v.boolean()),
  /** A butt hinge of the rack; the first there when absent. */
  hinge: v.optional(Id),
  /** A stay of the rack that holds it open; the first that does when absent. */
  stay: v.optional(Id),
});
export type TopRecord = v.InferOutput<typeof TopRecord>;
