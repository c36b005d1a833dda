import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** A back of one bay stands behind an opening of the case’s own split, across or down; all backs of a case are fitted alike. */
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
  const parted = whole?.kind === 'opening' && (whole.split === 'across' || whole.split === 'down');
  if (!parted || whole.parent !== box?.id)
    return [
      say(
        'parent',
        `“${bay.id}” is no opening of the case’s own split, side by side or one above the other, so “${back.id}” can’t close it.`,
        [{ says: 'Give the back to the case, or to an opening of its first split, made across or down.' }],
      ),
    ];
  const own = tree.childOf(box.id, 'back');
  if (own)
    return [
      say('parent', `“${box.id}” has a back, “${own.id}”; “${back.id}” would stand in the same place.`, [
        { says: 'Keep the one back, or give each bay its own.' },
      ]),
    ];
  const bays = tree.childrenOf(whole.id, 'opening');
  const at = bays.findIndex((o) => o.id === bay.id);
  const beside = [bays[at - 1], bays[at + 1]].filter((o) => o && tree.childOf(o.id, 'back'));
  if (back.fitting === 'applied' && whole.split === 'across' && beside.length === 2)
    return [
      say(
        'fitting',
        `“${back.id}” would lie on halves of the back edges on either hand, too narrow for screws, and hang by its lower end.`,
        [
          { says: 'Let it into rabbets.', edits: [{ record: back.id, field: 'fitting', value: 'rabbet' }] },
          { says: 'Leave out the back of a bay beside it.' },
        ],
      ),
    ];
  const [first] = tree.childrenOf(whole.id, 'opening').flatMap((o) => tree.childOf(o.id, 'back') ?? []);
  if (!first) return [];
  const alike = first.fitting === back.fitting && first.setIn === back.setIn;
  if (alike && whole.split === 'down' && back.fitting === 'groove' && first.board !== back.board)
    return [
      say(
        'board',
        `“${back.id}” and “${first.id}” stand in the same grooves, the lower one slides in through the place of the upper: they must be of one board.`,
        [
          {
            says: 'Make them of one board.',
            edits: [{ record: back.id, field: 'board', value: first.board }],
          },
          { says: 'Let all of them into rabbets.' },
        ],
      ),
    ];
  // One that doesn't say how it is fitted has been told so, and is not held against others.
  if (alike || !first.fitting || !back.fitting) return [];
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
