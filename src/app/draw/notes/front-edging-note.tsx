import { treeOf } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { useApp } from '../../state/use-desk.ts';
import { addEdgingEdit, removeEdit } from '../design-edits.ts';

/** Strips or tape on the edges of a door or of drawers' fronts, and on which of them. */
export function FrontEdging({ of }: { of: string }) {
  const job = useApp((s) => s.history.job);
  const edging = treeOf(job).childOf(of, 'edging');
  if (!edging)
    return (
      <EditButton edit={() => addEdgingEdit(job, of)} quiet>
        Edge {of}
      </EditButton>
    );
  const at = `design/records/${edging.id}`;
  return (
    <>
      Edged with <LotField path={`${at}/strip`} label={`Edging of ${of}`} form="strip" />{' '}
      <ChoiceField
        path={`${at}/sides`}
        label={`Edges of ${of} that have it`}
        choices={[
          ['', 'all round'],
          ['upper,lower', 'above and below'],
          ['left,right', 'at both sides'],
          ['left,right,upper', 'at both sides and above'],
          ['upper', 'above alone'],
        ]}
        editOf={(v) =>
          v === ''
            ? { edit: 'set', at: `${at}/sides` }
            : { edit: 'set', at: `${at}/sides`, value: v.split(',') }
        }
        end="."
      />{' '}
      <EditButton edit={() => removeEdit(job, edging.id)} quiet>
        Leave the edges of {of} bare
      </EditButton>
    </>
  );
}
