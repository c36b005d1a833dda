import { FROM_SIDES, type RecordOf, treeOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { EditButton } from '../../fields/edit-button.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { useApp } from '../../state/use-desk.ts';
import { removeEdit } from '../design-edits.ts';
import { Note } from './note.tsx';

const WORDS: Readonly<Record<(typeof FROM_SIDES)[number][number], string>> = {
  fromLeft: 'from the left',
  fromRight: 'from the right',
  fromFront: 'from the front',
  fromBack: 'from the back',
  fromBelow: 'from below',
  fromAbove: 'from above',
};

/** Holes for cables: through which panel, where, and for what plug. */
export function CablesNote({ cables }: { cables: readonly RecordOf<'cable'>[] }) {
  return (
    <Note title="Holes for cables">
      {cables.map((c) => (
        <CableLine key={c.id} cable={c} />
      ))}
    </Note>
  );
}

function CableLine({ cable }: { cable: RecordOf<'cable'> }) {
  const job = useApp((s) => s.history.job);
  const at = `design/records/${cable.id}`;
  const inCase = treeOf(job).get(cable.parent)?.kind === 'case';
  // Unset places are offered only where none is set along that way, so that no two sides are named at once.
  const shown = FROM_SIDES.flatMap((pair) => {
    const set = pair.filter((field) => cable[field] !== undefined);
    return set.length > 0 ? set : [pair[0]];
  });
  return (
    <p>
      <strong>{cable.id}</strong>, through{' '}
      {inCase ? (
        <ChoiceField
          path={`${at}/panel`}
          label={`Panel of ${cable.id}`}
          choices={[
            ['left-side', 'the left side'],
            ['right-side', 'the right side'],
            ['bottom', 'the bottom'],
            ['lid', 'the top panel'],
          ]}
        />
      ) : (
        cable.parent
      )}
      , for <LengthField path={`${at}/plug`} label={`Plug for ${cable.id}`} end=";" /> its middle{' '}
      {shown.map((field) => (
        <span key={field}>
          <LengthField path={`${at}/${field}`} label={`${cable.id}, ${WORDS[field]}`} empty="half way" />{' '}
          {WORDS[field]},{' '}
        </span>
      ))}
      of <LengthField path={`${at}/in`} label={`Opening of ${cable.id}`} empty="the panel" end="." />{' '}
      <EditButton edit={() => removeEdit(job, cable.id)} quiet>
        Take away
      </EditButton>
    </p>
  );
}
