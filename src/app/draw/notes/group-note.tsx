import type { RecordOf } from '../../../job/index.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Note } from './note.tsx';

/** Cases that stand together: side by side, or one on the other. */
export function GroupNote({ group }: { group: RecordOf<'group'> }) {
  return (
    <Note title={`Cases of ${group.id}`}>
      <p>
        They stand{' '}
        <ChoiceField
          path={`design/records/${group.id}/lay`}
          label="How the cases stand together"
          choices={[
            ['across', 'side by side, from the left'],
            ['up', 'one on the other, from the floor'],
          ]}
          end=","
        />{' '}
        and are screwed together.
      </p>
    </Note>
  );
}
