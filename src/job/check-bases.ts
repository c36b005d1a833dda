import type { Snag } from '../snag/index.ts';
import { runsPast } from './corners-of-case.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** What each form of a base needs, and what it can't have. */
const NEEDS = {
  frame: { has: ['board', 'height'], lacks: ['strip', 'apron', 'leveller'] },
  'toe-kick': { has: ['board', 'height'], lacks: ['strip', 'setbackBack', 'apron', 'leveller'] },
  feet: { has: ['strip'], lacks: ['board', 'height', 'apron', 'leveller'] },
  legs: { has: ['board', 'strip', 'height'], lacks: ['leveller'] },
  levellers: { has: [], lacks: ['board', 'strip', 'apron'] },
} as const;

/** Whether a base says what its form needs, and no more. */
export function badBase(base: RecordOf<'base'>, tree: RecordTree): readonly Snag[] {
  const form = base.form ?? 'frame';
  const { has, lacks } = NEEDS[form];
  const at = (field: string) => ({ path: `design/records/${base.id}/${field}`, record: base.id });
  const box = tree.get(base.parent);
  const under =
    form === 'toe-kick' &&
    box?.kind === 'case' &&
    (runsPast(box, 'bottom', 'left') || runsPast(box, 'bottom', 'right'));
  return [
    ...(under
      ? [
          {
            code: 'design.base-form',
            level: 'stop' as const,
            where: { path: `design/records/${base.id}/form`, record: base.id },
            sentence: `Sides that run to the floor can’t stand on the bottom of “${base.parent}”.`,
            cures: [
              {
                says: 'Let the bottom stand between the sides.',
                edits: [{ record: base.parent, field: 'bottom', value: 'between' }],
              },
            ],
          },
        ]
      : []),
    ...has
      .filter((field) => base[field] === undefined)
      .map(
        (field): Snag => ({
          code: 'document.missing-field',
          level: 'stop',
          where: at(field),
          sentence: `“${base.id}”, a base of form “${form}”, needs “${field}”.`,
          cures: [{ says: `Add “${field}”.` }],
        }),
      ),
    ...lacks
      .filter((field) => base[field] !== undefined)
      .map(
        (field): Snag => ({
          code: 'design.base-form',
          level: 'stop',
          where: at(field),
          sentence: `“${field}” says nothing of a base of form “${form}”.`,
          cures: [{ says: `Take “${field}” out, or give the base another form.` }],
        }),
      ),
  ];
}

/** A case hangs on the wall or stands on a base. */
export function hungOnBase(hanging: RecordOf<'hanging'>, tree: RecordTree): readonly Snag[] {
  const base = tree.childOf(hanging.parent, 'base');
  return base
    ? [
        {
          code: 'design.hung-and-based',
          level: 'stop',
          where: { path: `design/records/${hanging.id}`, record: hanging.id },
          sentence: `“${hanging.parent}” is to hang on the wall and to stand on “${base.id}”.`,
          cures: [{ says: 'Keep one of the two.' }],
        },
      ]
    : [];
}

/** One base under several cases is a frame under a row, and none of those on it has a base of its own, or hangs. */
export function baseUnderCases(base: RecordOf<'base'>, tree: RecordTree): readonly Snag[] {
  const group = tree.get(base.parent);
  if (group?.kind !== 'group') return [];
  const say = (record: string, field: string, sentence: string, says: string): Snag => ({
    code: 'design.base-under-cases',
    level: 'stop',
    where: { path: `design/records/${record}/${field}`, record },
    sentence,
    cures: [{ says }],
  });
  if ((base.form ?? 'frame') !== 'frame')
    return [
      say(
        base.id,
        'form',
        `“${base.id}” carries several cases, and only a frame reaches under all of them.`,
        'Take “form” out, or give each case a base of its own.',
      ),
    ];
  if (group.lay === 'up')
    return [
      say(
        base.id,
        'parent',
        `“${group.id}” is a stack, so “${base.id}” would carry its lowest case alone.`,
        'Let it belong to that case.',
      ),
    ];
  return tree
    .casesOf(group.id)
    .flatMap((box) =>
      [tree.childOf(box.id, 'base'), tree.childOf(box.id, 'hanging')].flatMap((own) =>
        own
          ? [
              say(
                own.id,
                'parent',
                `“${box.id}” stands on “${base.id}”, the base under all of “${group.id}”, and has “${own.id}” besides.`,
                'Take one of the two out.',
              ),
            ]
          : [],
      ),
    );
}
