import { FIT_LIMITS } from '../../materials/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft } from '../draft.ts';
import { boundsOf } from '../sliding/sliding-bounds.ts';
import type { SlidingSet } from '../sliding/sliding-set.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import { betweenOf, type ClearLoops } from './clear-loops.ts';
import { addFit, between, cut, type FitMember, setBy, thick } from './fit.ts';

/** Sliding doors in their tracks: each can be lifted in, and is held once it is down; what runs has room in its groove. */
export function fitsOfSliding(draft: Draft, frame: CaseFrame, closed: ClosedSpaces, loops: ClearLoops): void {
  const l = draft.ledger;
  for (const set of draft.sliding) {
    const record = frame.sliding.find((r) => r.id === set.record);
    const bounds = record && boundsOf(draft, closed, record, draft.part(set.above));
    if (!bounds) continue;
    const clear = loops.of(betweenOf('height', bounds.bays[0]!, bounds.bays.at(-1)));
    const upper = setBy('router', 'depth of the upper groove', set.groove.upper, 1, set.above);
    const lower = setBy('router', 'depth of the lower groove', set.groove.lower, -1, set.below);
    for (const leaf of set.leaves) {
      const part = draft.part(leaf.part);
      addFit(draft, {
        id: `${part.id}/lift`,
        kind: 'track',
        name: `the ${part.name}, lifted over the edge of its lower groove`,
        gap: l.less(
          'what is left above a door that is lifted in',
          l.sum('clear height and the upper groove', bounds.height, set.groove.upper),
          part.length,
        ),
        least: l.row(FIT_LIMITS.liftsIn),
        loop: [...clear, upper, cut(draft, part, 'length', -1)],
        // Over the edge below it passes the panel's own face; above it looks at the floor of the groove.
        faces: [
          ...between(part, '-z', part, '+z'),
          { part: draft.part(set.below), looks: '+z' },
          { part: draft.part(set.above), looks: '-z', channel: true },
        ],
        toFit: part.id,
      });
      addFit(draft, {
        id: `${part.id}/hold`,
        kind: 'track',
        name: `the ${part.name}, held by its upper groove`,
        gap: l.less('what stays in the upper groove', part.length, bounds.height, set.groove.lower),
        least: l.row(FIT_LIMITS.held),
        loop: [cut(draft, part, 'length', 1), lower, ...clear.map(turned)],
      });
    }
    runsFreely(draft, set, `the sliding doors of ${record.over[0]}`);
  }
}

function turned(m: FitMember): FitMember {
  return { ...m, sign: -m.sign as 1 | -1 };
}

/** What runs in a groove is the board's thickness, less the rabbet where a tongue is left. */
function runsFreely(draft: Draft, set: SlidingSet, doors: string): void {
  const l = draft.ledger;
  const part = draft.part(set.leaves[0]!.part);
  const rabbet = part.features.find((f) => f.kind === 'rabbet');
  const behind =
    rabbet?.kind === 'rabbet'
      ? [setBy('router', 'depth of the rabbet behind the tongue', rabbet.depth, 1, part.id)]
      : [];
  addFit(draft, {
    id: `${set.record}/play`,
    kind: 'track',
    deep: true,
    name: `${doors} in the width of their grooves`,
    gap: l.less('how much wider a groove is than what runs in it', set.groove.width, set.tongue),
    least: l.row(FIT_LIMITS.runs),
    most: l.row(FIT_LIMITS.wobbles),
    loop: [
      setBy('router', 'width of the groove', set.groove.width, 1, set.below),
      ...behind,
      thick(part, -1),
    ],
    faces: [
      ...between(part, '-y', part, '+y'),
      { part: draft.part(set.below), looks: '+y', channel: true },
      { part: draft.part(set.below), looks: '-y', channel: true },
    ],
  });
}
