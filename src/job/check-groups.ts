import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** Cases and groups of one group. */
const MOST_MEMBERS = 60;

/** A group has something to put together, and its members say nothing that is not theirs to say. */
export function badGroup(group: RecordOf<'group'>, tree: RecordTree): readonly Snag[] {
  const members = tree.membersOf(group.id);
  // One case in an alcove needs a row for the fillers beside it.
  const filled = members.length === 1 && tree.all('filler').some((f) => f.parent === group.id);
  if (members.length < 2 && !filled)
    return [
      wrongField(
        group,
        'design.group-of-one',
        undefined,
        `“${group.id}” holds ${members.length === 0 ? 'no case' : 'only one case'}.`,
        'Give it two or more, or fillers beside the one, or take the group out.',
      ),
    ];
  if (members.length > MOST_MEMBERS)
    return [
      wrongField(
        group,
        'design.too-many-cases',
        undefined,
        `“${group.id}” holds ${members.length} cases, more than the ${MOST_MEMBERS} of one group.`,
        'Put some of them into groups of their own.',
      ),
    ];
  if (group.lay === 'across') return [];
  return members
    .filter((m) => m.height !== undefined)
    .map((m) =>
      wrongField(
        m,
        'design.height-in-stack',
        'height',
        `“${m.id}” stands in a stack, where its height is its “size”.`,
        'Give it as “size”.',
      ),
    );
}

/** A case or a group that stands alone fills the piece, and has no size of its own. */
export function sizeAlone(record: RecordOf<'case' | 'group'>, tree: RecordTree): readonly Snag[] {
  if (tree.get(record.parent)?.kind !== 'piece') return [];
  return (['size', 'height', 'depth'] as const)
    .filter((field) => record[field] !== undefined)
    .map((field) => ({
      code: 'design.size-without-group',
      level: 'stop' as const,
      where: { path: `design/records/${record.id}/${field}`, record: record.id },
      sentence: `“${record.id}” stands alone, so it is as large as the piece, and has no ${field} of its own.`,
      cures: [{ says: 'Give the sizes to the piece, or put it into a group with others.' }],
    }));
}

/** Only what stands on the floor has a base. */
export function baseUponCase(base: RecordOf<'base'>, tree: RecordTree): readonly Snag[] {
  const seen = new Set<string>();
  for (let at = tree.get(base.parent); at && 'parent' in at && !seen.has(at.id); at = tree.get(at.parent)) {
    seen.add(at.id);
    const group = tree.get(at.parent);
    if (group?.kind !== 'group' || group.lay !== 'up' || tree.membersOf(group.id)[0] === at) continue;
    return [
      {
        code: 'design.base-upon-case',
        level: 'stop',
        where: { path: `design/records/${base.id}`, record: base.id },
        sentence: `“${base.id}” would lift “${base.parent}” off the case that it stands on.`,
        cures: [{ says: 'Take the base out; the upper case is screwed to the lower one.' }],
      },
    ];
  }
  return [];
}
