import type { RecordOf } from '../../../job/index.ts';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { Note } from './note.tsx';

/** What the piece is to hold: where it stands, its sizes and its weight. */
export function ThingsNote({ things }: { things: readonly RecordOf<'thing'>[] }) {
  const job = useApp((s) => s.history.job);
  return (
    <Note title="What it holds">
      {things.map((thing) => {
        const at = `design/records/${thing.id}`;
        return (
          <p key={thing.id}>
            <NumberField path={`${at}/count`} label={`How many of ${thing.id}`} empty="one" /> ×{' '}
            <LengthField path={`${at}/name`} label={`Name of ${thing.id}`} /> in {thing.parent}:{' '}
            <LengthField path={`${at}/width`} label={`Width of ${thing.id}`} /> wide,{' '}
            <LengthField path={`${at}/height`} label={`Height of ${thing.id}`} /> high,{' '}
            <LengthField path={`${at}/depth`} label={`Depth of ${thing.id}`} /> deep; it weighs{' '}
            <LengthField path={`${at}/mass`} label={`Weight of ${thing.id}`} empty="not said" end="," /> gives
            off <NumberField path={`${at}/heat`} label={`Heat of ${thing.id}, W`} empty="no" /> W of heat, and
            wants <LengthField path={`${at}/clear`} label={`Free room round ${thing.id}`} empty="no room" />{' '}
            round it and <LengthField path={`${at}/behind`} label={`Room behind ${thing.id}`} empty="none" />{' '}
            behind for what must reach it.{' '}
            <EditButton edit={() => removeEdit(job, thing.id)} quiet>
              Take away
            </EditButton>
          </p>
        );
      })}
    </Note>
  );
}
