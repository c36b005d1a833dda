import { type RecordOf, treeOf } from '../job/index.ts';
import { BASES } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';

type Wall = NonNullable<RecordOf<'room'>['wall']>;

/** What is screwed to a wall: the boards that a screw goes through before the wall. */
export interface ThroughBoards {
  /** Their thicknesses together; absent where an angle bracket is all there is. */
  readonly boards?: Traced;
}

/** Of the anchors of what hangs: where the forces stand that the checks have reckoned. */
export const EACH_HOLDS =
  'What each has to hold, downward and away from the wall, stands with the checks of this plan.';

/** How something is fixed to the wall behind it, by what that is made of. */
export function wallLines(bench: Bench, { boards }: ThroughBoards, lengths: Traced[]): readonly string[] {
  const [room] = treeOf(bench.job).all('room');
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const row = (r: (typeof BASES)['studHold']) => put(bench.set('marking', bench.ledger.row(r)));
  const through = () => (boards === undefined ? 'the bracket' : `${put(boards)} of boards`);
  // Only the wall there is puts its lengths on the card.
  const lines: Readonly<Record<Wall, () => readonly string[]>> = {
    studs: () => [
      'Find the studs, by knocking and with a fine nail where it won’t be seen, and mark the middle of each; look for pipes and cables before any hole is drilled.',
      `Every anchor goes into the middle of a stud: a wood screw through ${through()} and what covers the wall, and ${row(BASES.studHold)} further into the stud, in a pilot hole. What covers the studs holds nothing.`,
    ],
    masonry: () => [
      'Knock the wall: a dull sound is masonry, a hollow one loose plaster. Look for pipes and cables before any hole is drilled.',
      `Bore with a masonry bit as wide as the plug, ${row(BASES.plugDeeper)} deeper than it is long, in solid brick or stone and not in a joint, and blow the dust out. Plugs sit in the masonry, behind the plaster: a screw is as long as ${through()}, the plaster and the plug together.`,
      'Hollow bricks and aerated blocks ask for plugs that are made for them.',
    ],
    hollow: () => [
      'Nothing is hung on thin boards alone. Find what they are nailed to, or open the wall and put a board between the studs; then every anchor goes into that wood.',
      `Where studs stand wrong for the anchors, screw a batten across two of them first, ${row(BASES.studHold)} into each, and the piece to the batten.`,
    ],
  };
  return room?.wall === undefined
    ? ['Find the studs, or sound out the masonry; look for pipes and cables before any hole is drilled.']
    : lines[room.wall]();
}
