import * as v from 'valibot';
import { Id, Name, SizeText } from '../typed.ts';

/** A door, a passage or a hatch that a piece is carried through: its clear width and height. */
const Doorway = v.strictObject({ id: Id, name: v.optional(Name), width: SizeText, height: SizeText });

/** The way from the shop to where the piece will stand. */
export const WayHome = v.strictObject({
  /** The clear height under the lowest ceiling where it is stood up. */
  ceiling: v.optional(SizeText),
  doors: v.optional(v.pipe(v.array(Doorway), v.minLength(1, 'name a door, or none at all'))),
});
