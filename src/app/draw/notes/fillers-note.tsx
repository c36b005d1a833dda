import type { RecordOf } from '../../../job/index.ts';
import { LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { addFillerEdit, removeEdit } from '../design-edits.ts';
import { Note } from './note.tsx';

/** The strips that close a row to its walls. */
export function FillersNote({
  group,
  fillers,
}: {
  group: RecordOf<'group'>;
  fillers: readonly RecordOf<'filler'>[];
}) {
  const job = useApp((s) => s.history.job);
  return (
    <>
      {fillers.length > 0 && (
        <Note title={`Fillers of ${group.id}`}>
          {fillers.map(({ id }) => {
            const at = `design/records/${id}`;
            return (
              <p key={id}>
                {id}: of <LotField path={`${at}/board`} label={`Board of ${id}`} form="sheet" end="," />{' '}
                <LengthField path={`${at}/size`} label={`Width of ${id}`} empty="an equal share" /> wide, cut{' '}
                <LengthField path={`${at}/scribe`} label={`Scribe of ${id}`} empty="12 mm" /> wider to be
                scribed to the wall, set back{' '}
                <LengthField path={`${at}/setback`} label={`Setback of ${id}`} empty="nothing" end="." />{' '}
                <EditButton edit={() => removeEdit(job, id)} quiet>
                  Take away
                </EditButton>
              </p>
            );
          })}
        </Note>
      )}
      {fillers.length < 2 && (
        <p className="acts">
          {(['left', 'right'] as const).map((hand) => (
            <EditButton key={hand} edit={() => addFillerEdit(job, group, hand)}>
              Add a filler to the wall on the {hand}
            </EditButton>
          ))}
        </p>
      )}
    </>
  );
}
