import type { Part } from '../part.ts';
import type { SetOut } from '../set-out.ts';
import { exposedFaces } from './exposed-faces.ts';
import { surfaceClass } from './surface-class.ts';

/**
 * How many good faces the stock of each part must have: none where neither broad face is seen once the piece stands, one
 * where its show face alone is, and two for all others (a part that shows its other face alone would have to be laid out
 * in a mirror). What is seen inside the piece counts as seen.
 */
export function goodFaces(setOut: SetOut): (part: Pick<Part, 'id'>) => 0 | 1 | 2 {
  const classOf = surfaceClass(setOut);
  const seen = new Set(
    exposedFaces(setOut).flatMap((face) =>
      classOf(face) === 'hidden' ? [] : [`${face.part.id} ${face.side}`],
    ),
  );
  const standing = new Set(setOut.parts.map((p) => p.id));
  const needed = (id: string): 0 | 1 | 2 => (seen.has(`${id} under`) ? 2 : seen.has(`${id} show`) ? 1 : 0);
  const joined = new Map(setOut.joinedBlanks.map(({ blank, parts }) => [blank.id, parts]));
  return ({ id }) => {
    const parts = joined.get(id);
    // Joined parts lie with their show faces on one side.
    if (parts) return Math.max(...parts.map(needed)) as 0 | 1 | 2;
    // Boards of a glued-up panel, and blanks that are parted later, are planed or sawn through: both faces may show.
    return standing.has(id) ? needed(id) : 2;
  };
}
