import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/**
 * A back of one bay stands behind an opening of the case’s own split, across or down; all backs of a case come in one plane. Side by side
 * some may stand in rabbets and some in grooves.
 */
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
  if (back.fitting === 'groove' && whole.split === 'across' && bays.length > 1 && box.joints === 'mitre')
    return [
      say(
        'fitting',
        `Mitred panels are glued all round at once, and the dividers come between them when these have set: “${back.id}” would have to be in grooves of dividers that aren’t there yet.`,
        [{ says: 'Let it into rabbets.', edits: [{ record: back.id, field: 'fitting', value: 'rabbet' }] }],
      ),
    ];
  const backs = tree.childrenOf(whole.id, 'opening').flatMap((o) => tree.childOf(o.id, 'back') ?? []);
  const [first] = backs;
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
  if (!first.fitting || !back.fitting) return [];
  if (first.fitting !== back.fitting) {
    const why = apart(back, first, whole.split === 'down');
    if (why)
      return [
        say('fitting', why, [
          { says: 'Fit it alike.', edits: [{ record: back.id, field: 'fitting', value: first.fitting }] },
        ]),
      ];
  }
  // In rabbets beside grooves a back is set in as that is which stands in them, so it needn't say how far.
  const grooved = backs.find((b) => b.fitting === 'groove');
  const leads = grooved ?? backs.find((b) => b.fitting === back.fitting) ?? first;
  const follows = back.fitting === 'rabbet' && grooved !== undefined && back.setIn === undefined;
  if (follows || leads.setIn === back.setIn) return [];
  return [
    say(
      'setIn',
      `“${back.id}” is set in otherwise than “${leads.id}”: all backs of a case come in one plane.`,
      [
        leads.setIn === undefined
          ? { says: 'Leave “setIn” out.', edits: [{ record: back.id, field: 'setIn' }] }
          : { says: 'Set it in alike.', edits: [{ record: back.id, field: 'setIn', value: leads.setIn }] },
      ],
    ),
  ];
}

/** Why two backs can't be fitted one this way and one the other; undefined where they can. */
function apart(back: RecordOf<'back'>, first: RecordOf<'back'>, down: boolean): string | undefined {
  if (down)
    return `“${back.id}” is fitted otherwise than “${first.id}”: one above another, they stand in the same sides, which are grooved, rabbeted or cut short for a back from end to end.`;
  if (back.fitting !== 'applied' && first.fitting !== 'applied') return undefined;
  const [laid, inside] = back.fitting === 'applied' ? [back, first] : [first, back];
  return `“${laid.id}” is laid on and “${inside.id}” let in: what stands between them can’t end before the one and run on behind the other.`;
}
