import type { Part, ScribedTop } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { liftCautions } from './lifting.ts';
import { listWords } from './words.ts';

/** Scribes tops to the walls at their ends, when cases and fillers are fixed in their place, and screws them on again. */
export function scribeTops(bench: Bench): void {
  for (const top of bench.setOut.scribedTops) scribeTop(bench, top);
}

function scribeTop(bench: Bench, { part: id, strips, ends, scribe }: ScribedTop): void {
  const l = bench.ledger;
  const partOf = (of: string): Part => bench.setOut.parts.find((p) => p.id === of)!;
  const top = partOf(id);
  const { mark } = top;
  const lids = bench.setOut.joints
    .filter((j) => j.mate === id && j.duty !== 'edging')
    .map((j) => partOf(j.part))
    .sort((a, b) => l.ticks(a.place.origin[0]) - l.ticks(b.place.origin[0]))
    .map((p) => p.mark);
  const finished = bench.job.shop.rack.finishes.length > 0;
  // From the right to the left: what is sawn first is measured from the end that isn't sawn yet.
  const inOrder = [...ends].reverse();
  inOrder.forEach((end, i) => {
    const gone = l.times('what is sawn off', scribe, i + 1);
    const leaves = bench.set('marking', l.less('what stays of its length', top.length, gone));
    const off = bench.set('marking', scribe);
    const wall = end === 'start' ? 'left' : 'right';
    const last = i === inOrder.length - 1;
    const lid = lids[end === 'start' ? 0 : lids.length - 1];
    bench.do(
      {
        id: `${mark}/scribe-${wall}`,
        kind: 'scribe',
        stage: 'home',
        title: `Scribe ${mark} (${top.name}) to the wall on the ${wall}`,
        does: {
          act: 'scribe',
          workpiece: mark,
          edge: end,
          ...(strips.length > 0 ? { with: strips.map((s) => partOf(s).mark) } : {}),
          leaves,
        },
        lines: [
          ...(i === 0
            ? [
                `The cases and fillers are level, plumb and fixed by now. ${mark} is longer than its place: it lies aside, its screws out.`,
              ]
            : []),
          `A pattern first: a strip of thin board or stiff card, as wide as ${mark} is deep, flat on ${lid} and against the wall, its front edge where that of ${mark} comes. Scribe it to the wall with compasses, and try it until it touches all along.`,
          `From below, mark the holes of ${lid} through on the pattern. Turn ${mark} over, and the pattern on it, these marks on their pilots and both fronts level; draw its wall edge on ${mark}.`,
          `Where the wall is as drawn, {0} come off${strips.length > 0 ? ', its edging as well,' : ''} and {1} of the length stay; elsewhere it follows the wall.`,
          'Saw on the waste side, the saw leaning so that the upper edge is the one that touches, and plane to the line.',
          ...(finished
            ? ['Two coats of finish on the fresh end: it stands against a wall that may be damp.']
            : []),
          ...(last
            ? [
                `Lay ${mark} down from the front, ${ends.length === 2 ? 'one end first, close to the wall, the other let down after it' : 'its sawn end to the wall'}, and drive its screws again from inside ${listWords(lids)}, through the same holes.`,
              ]
            : []),
        ],
        lengths: [off, leaves],
        cautions: [CAUTION.handsaw, CAUTION.dust, ...(last ? liftCautions(bench, [top]) : [])],
      },
      [mark, 'case'],
    );
  });
}
