import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { Note } from './note.tsx';

const LISTS = [
  ['widths', 'From wall to wall', 'width'],
  ['heights', 'From the floor up', 'height'],
  ['depths', 'From front to back', 'depth'],
] as const;

/** The place that the piece is built into, as it was measured. */
export function RoomNote({ room, piece }: { room: RecordOf<'room'>; piece: RecordOf<'piece'> }) {
  const at = `design/records/${room.id}`;
  return (
    <Note title={`Room ${room.id}`}>
      {LISTS.map(([list, words, size]) => {
        const measures = room[list] ?? [];
        return (
          <p key={list}>
            {words}: {measures.length === 0 && 'not measured '}
            {measures.map((_, i) => (
              // Measures have no names: a place in the list is all that tells one from another.
              <span key={`${list}${i.toString()}`}>
                <LengthField path={`${at}/${list}/${i}`} label={`${words}, measure ${i + 1}`} />
                {i < measures.length - 1 ? ', ' : ' '}
              </span>
            ))}
            <EditButton
              edit={() => ({
                edit: 'set',
                at: `${at}/${list}`,
                value: [...measures, measures.at(-1) ?? piece[size]],
              })}
              quiet
            >
              {measures.length === 0 ? 'Measure it' : 'Measure at another place'}
            </EditButton>
          </p>
        );
      })}
      <p>
        The wall behind it is{' '}
        <ChoiceField
          path={`${at}/wall`}
          label="What the wall is made of"
          choices={[
            ['', 'not known'],
            ['studs', 'covered studs'],
            ['masonry', 'brick or stone'],
            ['hollow', 'thin boards'],
          ]}
          end="."
        />
      </p>
      <p>
        The floor falls <LengthField path={`${at}/floorFall`} label="Fall of the floor" empty="nothing" />{' '}
        {room.floorFall !== undefined || room.fallsTo !== undefined ? (
          <ChoiceField
            path={`${at}/fallsTo`}
            label="Where the floor falls to"
            choices={[
              ['', 'nowhere'],
              ['left', 'to the left'],
              ['right', 'to the right'],
              ['front', 'to the front'],
              ['back', 'to the back'],
            ]}
            end="."
          />
        ) : (
          <EditButton edit={() => ({ edit: 'set', at: `${at}/fallsTo`, value: 'left' })} quiet>
            It falls
          </EditButton>
        )}
      </p>
    </Note>
  );
}
