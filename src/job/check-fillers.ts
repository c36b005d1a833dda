import { INDOORS } from '../materials/index.ts';
import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** A filler stands at the end of a row, where a wall is. */
export function badFiller(filler: RecordOf<'filler'>, tree: RecordTree): readonly Snag[] {
  const group = tree.get(filler.parent);
  if (group?.kind !== 'group') return [];
  const row = tree.rowOf(group.id);
  const place = row.indexOf(filler);
  const atEnd = place === 0 || place === row.length - 1;
  if (group.lay === 'across' && atEnd) return [];
  return [
    {
      code: 'design.filler-in-row',
      level: 'stop',
      where: { path: `design/records/${filler.id}/parent`, record: filler.id },
      sentence:
        group.lay === 'up'
          ? `“${group.id}” is a stack, so “${filler.id}” has no end of a row to close.`
          : `“${filler.id}” stands between cases of “${group.id}”, where there is no wall to scribe it to.`,
      cures: [{ says: 'Let it be the first or the last of a row.' }],
    },
  ];
}

/** There is one room, and a floor that falls says which way. */
export function badRoom(room: RecordOf<'room'>, tree: RecordTree): readonly Snag[] {
  return [
    ...(tree.all('room')[0] === room
      ? []
      : [
          wrongField(
            room,
            'design.too-many',
            undefined,
            'A piece is built into one room.',
            'Keep one of the records.',
          ),
        ]),
    ...((room.dryest ?? INDOORS.dryest) >= (room.dampest ?? INDOORS.dampest)
      ? [
          wrongField(
            room,
            'design.room-humidity',
            'dampest',
            `The air of “${room.id}” is no damper at its dampest than at its dryest.`,
            'Give “dryest” and “dampest” in per cent, the lower one first.',
          ),
        ]
      : []),
    ...(room.floorFall !== undefined && room.fallsTo === undefined
      ? [
          wrongField(
            room,
            'document.missing-field',
            'fallsTo',
            `“${room.id}” says how much its floor falls, but not which way.`,
            'Add “fallsTo”.',
          ),
        ]
      : []),
  ];
}
