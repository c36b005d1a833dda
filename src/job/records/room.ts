import * as v from 'valibot';
import { Id, MarginText, SizeText } from '../typed.ts';

const Measures = v.pipe(
  v.array(SizeText),
  v.minLength(1, 'a list of measures has one at least'),
  v.maxLength(20, 'a list of measures has 20 at most'),
);

const Humidity = v.pipe(v.number(), v.integer(), v.minValue(5), v.maxValue(95));

/** The place that the piece is built into, as it was measured: several times each way, since no wall is straight. */
export const RoomRecord = v.strictObject({
  kind: v.literal('room'),
  id: Id,
  /** From wall to wall: at three heights, at the front and at the back. */
  widths: v.optional(Measures),
  /** From the floor up, at several places. */
  heights: v.optional(Measures),
  /** From the back wall to where it must end, at several heights. */
  depths: v.optional(Measures),
  /** Relative humidity of its air when it is dryest and dampest, %. */
  dryest: v.optional(Humidity),
  dampest: v.optional(Humidity),
  /** What the wall behind it is: covered studs, brick or stone, or thin boards over nothing that is known. */
  wall: v.optional(v.picklist(['studs', 'masonry', 'hollow'])),
  /** How much lower the floor is at one end of the piece than at the other, and which. */
  floorFall: v.optional(MarginText),
  fallsTo: v.optional(v.picklist(['left', 'right', 'front', 'back'])),
});
export type RoomRecord = v.InferOutput<typeof RoomRecord>;
