import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { driveScrews } from './drive-screws.ts';
import { markWords } from './mark-words.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { setGroup } from './set-group.ts';
import { looks, sideWords } from './words.ts';

/** Scribes the fillers to their walls, when the cases stand level in their place, and screws them on from inside. */
export function fitFillers(bench: Bench): void {
  for (const filler of bench.setOut.parts.filter((p) => p.role === 'filler')) fitFiller(bench, filler);
}

function fitFiller(bench: Bench, filler: Part): void {
  const joints = bench.setOut.joints.filter((j) => j.duty === 'filler' && j.mate === filler.id);
  const side = bench.setOut.parts.find((p) => p.id === joints[0]?.part);
  // A filler that touches no case has been told in the drawing.
  if (!side) return;
  const l = bench.ledger;
  const { mark } = filler;
  const leaves = bench.set('marking', filler.width);
  const wall = looks(filler, 'far') === '-x' ? 'left' : 'right';
  bench.do(
    {
      id: `${mark}/scribe`,
      kind: 'scribe',
      stage: 'home',
      title: `Scribe ${mark} (${filler.name}) to the wall on the ${wall}`,
      does: { act: 'scribe', workpiece: mark, leaves },
      lines: [
        'The cases are level, plumb and fixed by now; what is scribed to them before does not fit after.',
        `Hold ${mark} before its gap, plumb by a level, its ${sideWords(filler, 'far')} touching the wall, lapping over ${side.mark}. Set compasses to the lap: from the outer face of ${side.mark} to the ${sideWords(filler, 'near')} of ${mark}.`,
        `Run them down the wall, the pencil on ${mark}. Where the wall is as drawn, {0} of ${mark} is left beside the line; elsewhere it follows the wall.`,
        'Saw on the waste side with the saw leaning, so that the back is undercut, and plane to the line.',
      ],
      lengths: [leaves],
      cautions: [CAUTION.handsaw, CAUTION.dust],
    },
    [mark, 'case'],
  );
  const [mine, there] = [planesOf(l, filler), planesOf(l, side)];
  const near = looks(filler, 'near');
  const face = near === '+x' ? '-x' : '+x';
  // Cases upon one another come out a step of the saw wider or narrower.
  const others = joints
    .map((j) => bench.setOut.parts.find((p) => p.id === j.part)!)
    .filter((p) => p !== side && l.ticks(planesOf(l, p).planes[face]) === l.ticks(there.planes[face]))
    .map((p) => p.mark);
  const touches: readonly [Touch, Touch, Touch] = [
    { side: near, of: side.mark, ...(others.length > 0 ? { or: others } : {}), face },
    offset(bench, mine, '-y', there),
    offset(bench, mine, '-z', there),
  ];
  setGroup(
    bench,
    'case',
    mark,
    `Set ${mark} (${filler.name}) between the wall and ${side.mark}`,
    touches,
    [
      ...shelvesOut(bench, side),
      'Clamp it to the side of the case through the open door or between the shelves, a pad under each jaw.',
    ],
    { length: filler.place.length, width: filler.place.width },
    'home',
  );
  for (const j of joints) driveScrews(bench, 'case', j, 'home');
}

/** Loose shelves beside the screws would leave a drill no room. */
function shelvesOut(bench: Bench, side: Part): readonly string[] {
  const marks = bench.setOut.pinned
    .filter((shelf) => shelf.posts.includes(side.id))
    .map((shelf) => bench.setOut.parts.find((p) => p.id === shelf.part)!.mark);
  if (marks.length === 0) return [];
  return [
    `Lift ${markWords(marks)} out first, which would leave the drill no room, and back on ${marks.length === 1 ? 'its' : 'their'} pins when the screws are in.`,
  ];
}
