import { FINISH_WORK } from '../../materials/index.ts';
import { type Ledger, toMm } from '../../measure/index.ts';
import type { UncutPart } from '../part.ts';
import { axisOf } from '../place.ts';
import type { SetOut } from '../set-out.ts';
import type { ExposedFace } from './exposed-faces.ts';
import type { SurfaceClass } from './surface-class.ts';
import { underShelvesOfChests } from './under-shelves-of-chests.ts';

type ComesOut = Pick<SetOut, 'drawers' | 'doors' | 'sliding' | 'pinned'>;

/**
 * Whether a face asks for its part to be finished before the piece is put together: it is inside, in a space that is closed behind it
 * or so narrow and deep that a hand with a cloth doesn't reach it, and doesn't come out. Channels of such a part are filled or taped
 * meanwhile.
 */
export function finishedBefore(
  setOut: ComesOut & { readonly ledger: Ledger; readonly parts: readonly UncutPart[] },
): (face: ExposedFace<UncutPart>, surface: SurfaceClass) => boolean {
  const comesOut = partsThatComeOut(setOut);
  const underShelves = underShelvesOfChests(setOut.parts, setOut.ledger, comesOut);
  return (face, surface) =>
    surface === 'inside' &&
    !comesOut.has(face.part.id) &&
    (closesBehind(face) || underShelves.has(face.part.id) || outOfReach(setOut.ledger, face));
}

/** Drawers, doors and loose shelves come out for the finish: every face of theirs can be reached then. */
function partsThatComeOut({ drawers, doors, sliding, pinned }: ComesOut): ReadonlySet<string> {
  return new Set([
    ...drawers.flatMap((d) => Object.values(d.parts)),
    ...doors.map((d) => d.part),
    ...sliding.flatMap((s) => s.leaves.map((d) => d.part)),
    ...pinned.map((s) => s.part),
  ]);
}

/** The hidden face of a panel parallel to the back: what lies between the two is closed all round once the back is on. */
export function closesBehind({ part, gapMm, looks }: ExposedFace<UncutPart>): boolean {
  return (
    looks === '+y' &&
    gapMm !== undefined &&
    /^(divider|panel:)/.test(part.role) &&
    axisOf(part.place.thickness).axis === 1
  );
}

/** A face in a space so narrow and deep that a hand with a cloth doesn’t reach it. */
function outOfReach(ledger: Ledger, { part, gapMm, looks }: ExposedFace<UncutPart>): boolean {
  if (gapMm === undefined || looks === '-y' || looks === '+y') return false;
  return gapMm < FINISH_WORK.handMm && toMm(ledger.ticks(part.width)) > FINISH_WORK.armMm;
}
