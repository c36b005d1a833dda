import type { RecordOf } from '../../../job/index.ts';
import { LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';

/** Thin dividers of a space, for trays. */
export function TraysNote({ trays }: { trays: RecordOf<'trays'> }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${trays.id}`;
  return (
    <p>
      <NumberField path={`${at}/count`} label={`How many tray dividers, ${trays.id}`} empty="1" /> upright for
      trays, equally spaced, of{' '}
      <LotField path={`${at}/board`} label={`Board of the tray dividers, ${trays.id}`} form="sheet" end="," />{' '}
      in dados above and below, set back{' '}
      <LengthField
        path={`${at}/setback`}
        label={`Setback of the tray dividers, ${trays.id}`}
        empty="nothing"
        end="."
      />{' '}
      <EditButton edit={() => removeEdit(job, trays.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
