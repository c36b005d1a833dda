import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** A bevelled cleat lies behind the one back of its case: the case goes to the wall, and is let down over the strip there. */
export function badCleat(hanging: RecordOf<'hanging'>, tree: RecordTree): readonly Snag[] {
  const box = tree.get(hanging.parent);
  if (hanging.by !== 'cleat' || box?.kind !== 'case') return [];
  const say = (record: string, field: string, sentence: string, cures: Snag['cures']): Snag => ({
    code: 'design.cleat-place',
    level: 'stop',
    where: { path: `design/records/${record}/${field}`, record },
    sentence,
    cures,
  });
  const rails = {
    says: 'Hang it by rails.',
    edits: [{ record: hanging.id, field: 'by', value: 'rails' }],
  } as const;
  const back = tree.childOf(box.id, 'back');
  const ofBays = tree.all('back').some((b) => b.parent !== box.id && tree.caseOf(b.id) === box);
  if (back) return [];
  return [
    say(
      hanging.id,
      'by',
      `“${hanging.id}” is a cleat, which lies behind the one back of its case; ${ofBays ? `the backs of “${box.id}” belong to its bays` : `“${box.id}” has none`}.`,
      [
        {
          says: ofBays ? 'Give the whole case one back, in place of those of its bays.' : 'Give it a back.',
        },
        rails,
      ],
    ),
  ];
}
