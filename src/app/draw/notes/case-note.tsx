import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField, LotField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/text-field.tsx';
import { Note } from './note.tsx';

/** The box: what its panels are cut from, and what stands on its bottom. */
export function CaseNote({ box }: { box: RecordOf<'case'> }) {
  const at = `design/records/${box.id}`;
  return (
    <Note title="Case">
      <p>
        Panels of <LotField path={`${at}/board`} label="Board of the case" form="sheet" />, joined{' '}
        <ChoiceField
          path={`${at}/joints`}
          label="How the panels are joined"
          choices={[
            ['', 'as the tools allow'],
            ['pocket-screws', 'by pocket screws'],
            ['face-screws', 'by screws through their faces'],
            ['rabbet', 'by rabbets at the corners, and pocket screws'],
            ['dado', 'by dados'],
            ['stopped-dado', 'by stopped dados'],
          ]}
          end="."
        />{' '}
        The bottom carries{' '}
        <LengthField path={`${at}/load`} label="Load on the bottom" empty="the usual load" end="." />
      </p>
    </Note>
  );
}
