import { FROM_SIDES, type RecordOf, treeOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField, NumberField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { AboutField, MeasuredField } from './middle-fields.tsx';
import { Note } from './note.tsx';

const WORDS: Readonly<Record<(typeof FROM_SIDES)[number][number], string>> = {
  fromLeft: 'from the left',
  fromRight: 'from the right',
  fromFront: 'from the front',
  fromBack: 'from the back',
  fromBelow: 'from below',
  fromAbove: 'from above',
};

/** Vents: through which panel, where, of what form and for how much heat. */
export function VentsNote({ vents }: { vents: readonly RecordOf<'vent'>[] }) {
  return (
    <Note title="Vents">
      {vents.map((v) => {
        const at = `design/records/${v.id}`;
        return (
          <PlacedLine key={v.id} record={v}>
            <ChoiceField
              path={`${at}/form`}
              label={`Form of ${v.id}`}
              choices={[
                ['slots', 'slots'],
                ['holes', 'holes'],
              ]}
            />{' '}
            for{' '}
            <LengthField path={`${at}/heat`} label={`Heat behind ${v.id}`} empty="no heat named" end="," />{' '}
            <NumberField
              path={`${at}/count`}
              label={`Openings of ${v.id}`}
              empty="as many as it takes"
              end=";"
            />
          </PlacedLine>
        );
      })}
    </Note>
  );
}

/** Holes for cables: through which panel, where, and for what plug. */
export function CablesNote({ cables }: { cables: readonly RecordOf<'cable'>[] }) {
  return (
    <Note title="Holes for cables">
      {cables.map((c) => (
        <PlacedLine key={c.id} record={c}>
          for <LengthField path={`design/records/${c.id}/plug`} label={`Plug for ${c.id}`} end=";" />
        </PlacedLine>
      ))}
    </Note>
  );
}

/** Rows of holes: in what, for what, how wide and deep, how many, and how they are spaced. */
export function HolesNote({ rows }: { rows: readonly RecordOf<'holes'>[] }) {
  return (
    <Note title="Rows of holes">
      {rows.map((r) => (
        <PlacedLine key={r.id} record={r}>
          <RowOfHoles record={r} />
        </PlacedLine>
      ))}
    </Note>
  );
}

function RowOfHoles({ record }: { record: RecordOf<'holes'> }) {
  const { id, panel } = record;
  const at = `design/records/${id}`;
  return (
    <>
      <NumberField path={`${at}/count`} label={`How many, ${id}`} empty="1" /> of{' '}
      <LengthField path={`${at}/diameter`} label={`Diameter of ${id}`} end="," />{' '}
      <LengthField path={`${at}/depth`} label={`Depth of ${id}`} empty="right through" />{' '}
      <ChoiceField
        path={`${at}/face`}
        label={`Face that ${id} is bored from`}
        choices={[
          ['', 'from either face'],
          ['left', 'deep from the left face'],
          ['right', 'deep from the right face'],
          ['front', 'deep from the front'],
          ['back', 'deep from behind'],
          ['below', 'deep from below'],
          ['above', 'deep from above'],
        ]}
        end=","
      />{' '}
      in a row{' '}
      <ChoiceField
        path={`${at}/lay`}
        label={`Way that ${id} runs`}
        choices={[
          ['', 'as usual'],
          ['across', 'from left to right'],
          ['up', 'upward'],
          ['back', 'backward'],
        ]}
        end=","
      />{' '}
      <LengthField path={`${at}/apart`} label={`Distance between holes of ${id}`} empty="equally" /> apart,
      about <AboutField id={id} own="the panel’s middle" /> places measured{' '}
      <MeasuredField id={id} nearest="to the nearest hole" />{' '}
      {(panel === 'left-side' || panel === 'right-side') && (
        <ChoiceField
          path={`${at}/mirror`}
          label={`Sides that ${id} is in`}
          absent="false"
          choices={[
            ['false', 'in that side only'],
            ['true', 'mirrored in the other side'],
          ]}
          editOf={(v) => ({ edit: 'set', at: `${at}/mirror`, value: v === 'true' })}
          end=","
        />
      )}{' '}
      for <LengthField path={`${at}/purpose`} label={`Purpose of ${id}`} empty="what you like" end=";" />
    </>
  );
}

interface PlacedProps {
  readonly record: RecordOf<'cable' | 'vent' | 'holes'>;
  readonly children: React.ReactNode;
}

/** What goes through a panel: which panel, what it is, and where its middle stands. */
function PlacedLine({ record, children }: PlacedProps) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${record.id}`;
  const inCase = treeOf(job).get(record.parent)?.kind === 'case';
  // Unset places are offered only where none is set along that way; a row may run from one side to the other.
  const shown = FROM_SIDES.flatMap((pair) => {
    const set = pair.filter((field) => record[field] !== undefined);
    return record.kind === 'holes' ? pair : set.length > 0 ? set : [pair[0]];
  });
  return (
    <p>
      <strong>{record.id}</strong>, through{' '}
      {inCase ? (
        <ChoiceField
          path={`${at}/panel`}
          label={`Panel of ${record.id}`}
          choices={[
            ['left-side', 'the left side'],
            ['right-side', 'the right side'],
            ['bottom', 'the bottom'],
            ['lid', 'the top panel'],
          ]}
        />
      ) : (
        record.parent
      )}
      , {children} its middle{' '}
      {shown.map((field) => (
        <span key={field}>
          <LengthField path={`${at}/${field}`} label={`${record.id}, ${WORDS[field]}`} empty="half way" />{' '}
          {WORDS[field]},{' '}
        </span>
      ))}
      of <LengthField path={`${at}/in`} label={`Opening of ${record.id}`} empty="the panel" end="." />{' '}
      <EditButton edit={() => removeEdit(job, record.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
