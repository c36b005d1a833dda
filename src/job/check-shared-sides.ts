import type { Snag } from '../snag/index.ts';
import { endsAt, runsPast } from './corners-of-case.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

const OTHER = { left: 'right', right: 'left' } as const;

/** Whether a side that a case shares with its neighbour can be shared: there is a neighbour that has it, and both cases close on it. */
export function badSharedSides(box: RecordOf<'case'>, tree: RecordTree): readonly Snag[] {
  return (['left', 'right'] as const).flatMap((hand): readonly Snag[] => {
    if (box[`${hand}Side`] !== 'shared') return [];
    const say = (record: string, field: string, sentence: string, cure: Snag['cures'][number]): Snag => ({
      code: 'design.side-not-shared',
      level: 'stop',
      where: { path: `design/records/${record}/${field}`, record },
      sentence,
      cures: [cure],
    });
    const own = {
      says: `Let “${box.id}” have a ${hand} side of its own.`,
      edits: [{ record: box.id, field: `${hand}Side`, value: 'own' }],
    };
    const mate = tree.neighbourOf(box, hand);
    const top = tree.childOf(box.id, 'top');
    if (!mate)
      return [
        say(
          box.id,
          `${hand}Side`,
          `“${box.id}” has no case on its ${hand} that it could share a side with.`,
          own,
        ),
      ];
    if (mate[`${OTHER[hand]}Side`] === 'shared')
      return hand === 'left'
        ? [
            say(
              box.id,
              'leftSide',
              `“${mate.id}” and “${box.id}” each leave the side between them to the other.`,
              own,
            ),
          ]
        : [];
    return [
      ...[
        { of: box, there: hand },
        { of: mate, there: OTHER[hand] },
      ].flatMap(({ of, there }) => {
        const field = (['bottom', 'lid'] as const).find((flat) => runsPast(of, flat, there));
        return field === undefined
          ? []
          : [
              say(
                of.id,
                field,
                `The ${field} of “${of.id}” can’t run through at a side that another case shares.`,
                {
                  says: `Let it end at its ${there} side.`,
                  edits: [{ record: of.id, field, value: endsAt(of, field, there) }],
                },
              ),
            ];
      }),
      ...[box, mate].flatMap((of) => {
        const back = tree.all('back').find((b) => tree.caseOf(b.id) === of);
        return back?.fitting === 'applied'
          ? [
              say(
                back.id,
                'fitting',
                `Two backs can’t both lie on the back edge of a side that “${box.id}” and “${mate.id}” share.`,
                {
                  says: 'Let it into rabbets.',
                  edits: [{ record: back.id, field: 'fitting', value: 'rabbet' }],
                },
              ),
            ]
          : [];
      }),
      ...(top && top.fit !== 'inset'
        ? [
            say(top.id, 'parent', `A top of “${box.id}” would lie on a side that belongs to “${mate.id}”.`, {
              says: `Let it lie over both of them: give it to “${box.parent}”.`,
            }),
          ]
        : []),
    ];
  });
}
