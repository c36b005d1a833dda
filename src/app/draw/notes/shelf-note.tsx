import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';

/** Shelves of one record: how many, how high, what they carry. */
export function ShelfNote({ shelf }: { shelf: RecordOf<'shelf'> }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${shelf.id}`;
  const many = (shelf.count ?? 1) > 1;
  return (
    <p>
      <NumberField path={`${at}/count`} label={`How many shelves, ${shelf.id}`} empty="1" />{' '}
      {many ? 'shelves, ' : 'shelf, '}
      {many ? (
        shelf.rowOf ? (
          ''
        ) : (
          'equally spaced, '
        )
      ) : (
        <>
          <LengthField path={`${at}/at`} label={`Clear height below ${shelf.id}`} empty="halfway" /> clear
          below,{' '}
        </>
      )}
      <ChoiceField
        path={`${at}/rowOf`}
        label={`What ${shelf.id} is spaced by`}
        choices={[
          ['', 'for anything'],
          ['paperbacks', 'for a row of paperbacks'],
          ['books-a5', 'for a row of A5 books'],
          ['books-a4', 'for a row of A4 books'],
          ['files-a4', 'for a row of A4 files'],
          ['lp-records', 'for a row of long-playing records'],
          ['single-records', 'for a row of single records'],
          ['compact-discs', 'for a row of compact discs'],
        ]}
        end=","
      />{' '}
      set back <LengthField path={`${at}/setback`} label={`Setback of ${shelf.id}`} empty="nothing" end="," />{' '}
      {many ? 'each carrying ' : 'carrying '}
      <LengthField path={`${at}/load`} label={`Load on ${shelf.id}`} empty="the usual load" end="." />{' '}
      <EditButton edit={() => removeEdit(job, shelf.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
