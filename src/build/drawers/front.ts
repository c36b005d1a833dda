import type { Traced } from '../../measure/index.ts';
import type { Drawer } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import { driveScrews } from '../drive-screws.ts';
import type { Touch } from '../operation.ts';
import { byEdging, offset, outermost } from '../seating.ts';
import { touchesTold } from '../touch-words.ts';
import { listWords } from '../words.ts';
import { boxName, named, partOf } from './in-words.ts';

/** The front goes on last, by its gaps, and is screwed from inside. */
export function fitFront(bench: Bench, drawer: Drawer): void {
  const end = partOf(bench, drawer.parts.front);
  const gap = bench.set('marking', drawer.gap);
  setFront(bench, drawer, 'case', {
    title: `Fit ${named(partOf(bench, drawer.parts.face))} to its opening and hold it against ${end.mark}`,
    gap,
    lines: (told) => [
      ...(drawer.hang === 'inset'
        ? [
            'Measure the opening as it was built: plane the front to {0} less on every side.',
            'Two strips of double-sided tape on the box’s front, the box pushed right in. Stand the front on slips of {0}, one beside it as well, press it home against the box, and take the slips out.',
          ]
        : [
            'Slips of {0} between it and the front beside or below; two dabs of hot glue or double-sided tape on the box hold it meanwhile.',
          ]),
      `Drawn: ${told}.`,
      drawer.hang === 'inset'
        ? 'Look at the gaps; then draw the drawer out by a loop of tape stuck over the front’s upper edge, and clamp the front to the box before the first screw.'
        : 'Look at the gaps; then draw the drawer out, and clamp the front to the box before the first screw.',
    ],
  });
}

/** The front of a box so shallow that no drill goes in: screwed on while its back is still open. */
export function frontOnOpenBox(bench: Bench, drawer: Drawer): void {
  const end = partOf(bench, drawer.parts.front);
  setFront(bench, drawer, boxName(bench, drawer), {
    title: `Hold ${named(partOf(bench, drawer.parts.face))} against ${end.mark}, before the back goes in`,
    gap: bench.set('marking', drawer.gap),
    lines: (told) => [
      'The box is too short inside for a drill, so its front goes on now, while the back is open.',
      `Where it comes: ${told}. Clamp it there.`,
      'Its gaps, {0} all round, are set later: where the runners’ slots don’t do, plane its edges.',
    ],
  });
}

/** Holds the front against its box and screws it on. */
function setFront(
  bench: Bench,
  drawer: Drawer,
  into: string,
  card: {
    readonly title: string;
    readonly gap: Traced;
    readonly lines: (told: string) => readonly string[];
  },
): void {
  const l = bench.ledger;
  const face = partOf(bench, drawer.parts.face);
  const end = partOf(bench, drawer.parts.front);
  const inner = planesOf(l, end);
  const at = (side: '-x' | '-z'): Touch => {
    const outer = outermost(bench, face, side);
    return byEdging(offset(bench, outer, side, inner), outer, face);
  };
  const touches: readonly [Touch, Touch, Touch] = [
    at('-x'),
    { side: '+y', of: end.mark, face: '-y' },
    at('-z'),
  ];
  const lengths: Traced[] = [card.gap];
  const told = touchesTold(bench, touches, lengths);
  bench.do(
    {
      id: `${face.mark}/set`,
      kind: 'hang',
      stage: 'fill',
      title: card.title,
      does: {
        act: 'set',
        workpiece: face.mark,
        into,
        turn: { length: face.place.length, width: face.place.width },
        touches,
        glue: false,
      },
      tool: 'clamp',
      lines: card.lines(listWords(told)),
      lengths,
    },
    [face.mark, into],
  );
  const joint = bench.setOut.joints.find(
    (j) => j.part === drawer.parts.front && j.mate === drawer.parts.face,
  );
  if (joint) driveScrews(bench, into, joint, 'fill');
}
