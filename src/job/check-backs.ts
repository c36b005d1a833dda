import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** A back of one bay is let into what bounds it: bays of the case itself, all of whose backs are fitted alike. */
export function badBackOfBay(back: RecordOf<'back'>, tree: RecordTree): readonly Snag[] {
  const bay = tree.get(back.parent);
  if (bay?.kind !== 'opening') return [];
  const say = (field: string, sentence: string, cures: Snag['cures']): Snag => ({
    code: 'design.back-of-bay',
    level: 'stop',
    where: { path: `design/records/${back.id}/${field}`, record: back.id },
    sentence,
    cures,
  });
  const whole = tree.get(bay.parent);
  const box = tree.caseOf(back.id);
  if (whole?.kind !== 'opening' || whole.split !== 'across' || whole.parent !== box?.id)
    return [
      say(
        'parent',
        `“${bay.id}” is no bay of the case itself, from its bottom to its upper end, so “${back.id}” can’t close it.`,
        [{ says: 'Give the back to the case, or to an opening of its first split, made across.' }],
      ),
    ];
  const own = tree.childOf(box.id, 'back');
  if (own)
    return [
      say('parent', `“${box.id}” has a back, “${own.id}”; “${back.id}” would stand in the same place.`, [
        { says: 'Keep the one back, or give each bay its own.' },
      ]),
    ];
  if (back.fitting === 'applied')
    return [
      say('fitting', `“${back.id}” would lie on half of a divider’s back edge, too narrow for screws.`, [
        {
          says: 'Let it into rabbets.',
          edits: [{ record: back.id, field: 'fitting', value: 'rabbet' }],
        },
      ]),
    ];
  const [first] = tree.childrenOf(whole.id, 'opening').flatMap((o) => tree.childOf(o.id, 'back') ?? []);
  if (!first || (first.fitting === back.fitting && first.setIn === back.setIn)) return [];
  const field = first.fitting === back.fitting ? 'setIn' : 'fitting';
  const value = first[field];
  return [
    say(
      field,
      `“${back.id}” is fitted otherwise than “${first.id}”: all backs of a case come in one plane.`,
      [
        value === undefined
          ? { says: 'Leave “setIn” out.' }
          : { says: 'Fit it alike.', edits: [{ record: back.id, field, value }] },
      ],
    ),
  ];
}
