import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** What fills an opening and leaves no room for anything else in it. */
const ALONE = ['pins', 'drawers', 'trays'] as const;

/** Whether what fills an opening can share it, and whether the opening is one space at all. */
export function badFillings(opening: RecordOf<'opening'>, tree: RecordTree): readonly Snag[] {
  const alone = ALONE.flatMap((kind) => [...tree.childrenOf(opening.id, kind)]);
  const [first] = alone;
  if (!first) return [];
  const beside = [...alone.slice(1), ...tree.childrenOf(opening.id, 'shelf')];
  if (opening.split === undefined && beside.length === 0) return [];
  return [
    {
      code: 'design.filled-twice',
      level: 'stop',
      where: { path: `design/records/${first.id}/parent`, record: first.id },
      sentence:
        opening.split === undefined
          ? `“${opening.id}” is filled by “${first.id}”, and “${beside[0]!.id}” would be in it too.`
          : `“${opening.id}” is split, so “${first.id}” must belong to one of its openings.`,
      cures: [{ says: 'Split the opening, and let each have an opening of its own.' }],
    },
  ];
}
