import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { AboutField, MeasuredField } from './middle-fields.tsx';
import { Note } from './note.tsx';

/** Shop-made handles: on what, of which strip, how long, and where they stand. */
export function HandlesNote({ handles }: { handles: readonly RecordOf<'handle'>[] }) {
  const job = useApp((s) => s.history.job);
  return (
    <Note title="Handles">
      {handles.map((record) => {
        const { id, parent } = record;
        const at = `design/records/${id}`;
        return (
          <p key={id}>
            <strong>{id}</strong>, on {parent}, of{' '}
            <LotField path={`${at}/strip`} label={`Strip of ${id}`} form="strip" end="," />{' '}
            <LengthField path={`${at}/length`} label={`Length of ${id}`} empty="a hand" /> long, running{' '}
            <WhereTheyStand record={record} />{' '}
            <EditButton edit={() => removeEdit(job, id)} quiet>
              Take away
            </EditButton>
          </p>
        );
      })}
    </Note>
  );
}

/** Bought pulls: on what, which, and where they stand. */
export function PullsNote({ pulls }: { pulls: readonly RecordOf<'pull'>[] }) {
  const job = useApp((s) => s.history.job);
  const rack = job.shop.rack.pulls ?? [];
  return (
    <Note title="Pulls">
      {pulls.map((record) => {
        const { id, parent } = record;
        const at = `design/records/${id}`;
        return (
          <p key={id}>
            <strong>{id}</strong>, on {parent},{' '}
            <ChoiceField
              path={`${at}/pull`}
              label={`Kind of ${id}`}
              choices={[
                ['', 'the first pull of the rack'],
                ...rack.map((p) => [p.id, p.name ?? p.id] as const),
              ]}
              end=","
            />{' '}
            running <WhereTheyStand record={record} />{' '}
            <EditButton edit={() => removeEdit(job, id)} quiet>
              Take away
            </EditButton>
          </p>
        );
      })}
    </Note>
  );
}

/** How many handles stand on a front, which way they run, and how far their middles are from its edges. */
function WhereTheyStand({ record: { id, count = 1 } }: { record: RecordOf<'handle' | 'pull'> }) {
  const at = `design/records/${id}`;
  return (
    <>
      <ChoiceField
        path={`${at}/lay`}
        label={`Way that ${id} runs`}
        choices={[
          ['', 'as usual'],
          ['across', 'across'],
          ['up', 'upward'],
        ]}
        end=","
      />{' '}
      <NumberField path={`${at}/count`} label={`How many on each front, ${id}`} empty="1" /> on each front,{' '}
      {count > 1 && (
        <>
          in a row{' '}
          <ChoiceField
            path={`${at}/row`}
            label={`Way that the row of ${id} runs`}
            choices={[
              ['', 'as usual'],
              ['across', 'from left to right'],
              ['up', 'upward'],
            ]}
            end=","
          />{' '}
          <LengthField path={`${at}/apart`} label={`Distance between two of ${id}`} empty="equally" /> apart,
          places measured <MeasuredField id={id} nearest="to the nearest one" />{' '}
        </>
      )}
      about <AboutField id={id} own="the front’s middle" /> its middle{' '}
      <LengthField path={`${at}/fromEdge`} label={`From the edge to ${id}`} empty="as usual" /> from the edge
      that opens, <LengthField path={`${at}/fromLeft`} label={`From the left to ${id}`} empty="half way" />{' '}
      from the left,{' '}
      <LengthField path={`${at}/fromRight`} label={`From the right to ${id}`} empty="half way" /> from the
      right, <LengthField path={`${at}/fromBelow`} label={`From below to ${id}`} empty="half way" /> from
      below, <LengthField path={`${at}/fromAbove`} label={`From above to ${id}`} empty="half way" /> from
      above.
    </>
  );
}
