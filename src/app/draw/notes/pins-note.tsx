import { type RecordOf, treeOf } from '../../../job/index.ts';
import { LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { addEdgingEdit, removeEdit } from '../design-edits.ts';

/** Loose shelves of a space, and the rows of holes that their pins go in. */
export function PinsNote({ pins }: { pins: RecordOf<'pins'> }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${pins.id}`;
  const edging = treeOf(job).childOf(pins.id, 'edging');
  const field = (name: string, label: string, empty: string, end?: string) => (
    <LengthField
      path={`${at}/${name}`}
      label={`${label}, ${pins.id}`}
      empty={empty}
      {...(end ? { end } : {})}
    />
  );
  return (
    <p>
      <NumberField path={`${at}/count`} label={`How many loose shelves, ${pins.id}`} empty="1" /> loose on
      pins, each carrying {field('load', 'Load on each loose shelf', 'the usual load', ',')} set back{' '}
      {field('setback', 'Setback of the loose shelves', 'nothing', '.')} Holes every{' '}
      {field('pitch', 'Pitch of the holes', 'usual pitch', ',')} from{' '}
      {field('below', 'Clear below the lowest hole', 'a hand')} above the floor to{' '}
      {field('above', 'Clear above the highest hole', 'a hand')} below the ceiling;{' '}
      {field('front', 'From the front to the first row', 'the usual')} from the front and{' '}
      {field('back', 'From the back to the other row', 'the usual')} from the back.{' '}
      {edging ? (
        <>
          Front edges faced with{' '}
          <LotField
            path={`design/records/${edging.id}/strip`}
            label={`Edging of the loose shelves, ${pins.id}`}
            form="strip"
            end="."
          />{' '}
          <EditButton edit={() => removeEdit(job, edging.id)} quiet>
            Leave them bare
          </EditButton>{' '}
        </>
      ) : (
        <EditButton edit={() => addEdgingEdit(job, pins.id)} quiet>
          Edge them in front
        </EditButton>
      )}{' '}
      <EditButton edit={() => removeEdit(job, pins.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
