import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** Whether what something stands about is there, in its own case; `code` is that of what says too little of itself. */
export function wrongAbout(
  record: RecordOf<'holes' | 'handle' | 'pull'>,
  about: string,
  tree: RecordTree,
  code: string,
): readonly Snag[] {
  const kind = tree.get(about)?.kind;
  if (kind !== 'opening' && kind !== 'shelf' && kind !== 'divider')
    return [
      wrongField(
        record,
        'document.no-such-record',
        'about',
        `“${record.id}” stands about “${about}”, which is no opening, shelf or divider.`,
        'Name one that is there.',
      ),
    ];
  if (tree.caseOf(about) === tree.caseOf(record.id)) return [];
  return [
    wrongField(
      record,
      code,
      'about',
      `“${record.id}” stands about “${about}”, which is in another case.`,
      'Name an opening, a shelf or a divider of its own case.',
    ),
  ];
}
