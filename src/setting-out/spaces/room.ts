import { measuresOf, type RecordOf, type RoomSize } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** A size of a room: the least of its measures, or the greatest of its widths; undefined where it wasn’t measured. */
export function roomSize(draft: Draft, room: RecordOf<'room'>, size: RoomSize): Traced | undefined {
  const measures = measuresOf(room, size);
  if (!measures) return undefined;
  const { field, of } = measures;
  const typed = of.map((text, i) => draft.typed(`design/records/${room.id}/${field}/${i}`, text));
  if (typed.length === 1) return typed[0];
  return size === 'widest'
    ? draft.ledger.greatest('widest place of the room', ...typed)
    : draft.ledger.least(`least ${size} of the room`, ...typed);
}

/** A piece larger than the room where it is smallest, standing on the highest place of its floor. */
export function fitsRoom(draft: Draft): void {
  const l = draft.ledger;
  const { piece } = draft;
  const [room] = draft.tree.all('room');
  if (!room) return;
  const fall = draft.field(room, 'floorFall');
  for (const [size, word] of [
    ['width', 'wide'],
    ['height', 'high'],
    ['depth', 'deep'],
  ] as const) {
    const least = roomSize(draft, room, size);
    if (least === undefined) continue;
    const asked = draft.field(piece, size);
    const free =
      size === 'height' ? l.less('height above the highest place of the floor', least, fall) : least;
    if (l.ticks(asked) <= l.ticks(free)) continue;
    const mm = toMm(l.ticks(free));
    draft.stop(
      'piece.too-large-for-its-place',
      piece,
      size,
      `The piece is ${piece[size]} ${word}, but “${room.id}” only ${mm} mm where it is least.`,
      {
        says: `Make it at most ${mm} mm ${word}.`,
        edits: [{ record: piece.id, field: size, value: `${mm} mm` }],
      },
    );
  }
}
