import type { Traced } from '../../measure/index.ts';
import type { Direction, Drawer, Part, WoodenRunners } from '../../setting-out/index.ts';
import { trialLoad } from '../amounts.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import { driveScrews } from '../drive-screws.ts';
import type { Touch } from '../operation.ts';
import { offset } from '../seating.ts';
import { touchesTold } from '../touch-words.ts';
import { listWords } from '../words.ts';
import { boxName, named, partOf } from './in-words.ts';
import { setInCase } from './set-in-case.ts';
import { whatMoves } from './what-moves.ts';

/** Strips screwed to the uprights, the box slid onto them, and along its whole way. */
export function onWoodenRunners(bench: Bench, drawer: Drawer, wooden: WoodenRunners): void {
  const [left, right] = [partOf(bench, wooden.left), partOf(bench, wooden.right)];
  const posts = [partOf(bench, drawer.posts[0]), partOf(bench, drawer.posts[1])] as const;
  const below = partOf(bench, drawer.below);
  setStrip(bench, left, posts[0], below, '-x');
  setStrip(bench, right, posts[1], below, '+x');
  slideIn(bench, drawer, wooden, left, posts);
  tryIt(bench, drawer, [left, right]);
}

/** One strip, by a stick from what is below, and screwed. */
function setStrip(bench: Bench, strip: Part, post: Part, below: Part, side: Direction): void {
  const l = bench.ledger;
  const mine = planesOf(l, strip);
  const gap = bench.set(
    'marking',
    l.less('runner above what is below', mine.planes['-z'], planesOf(l, below).planes['+z']),
  );
  const touches: readonly [Touch, Touch, Touch] = [
    { side, of: post.mark, face: side === '-x' ? '+x' : '-x' },
    offset(bench, mine, '-y', planesOf(l, post)),
    { side: '-z', of: below.mark, face: '+z', gap },
  ];
  const id = `${strip.mark}/set`;
  const stick = bench.gauges.use(gap, id, strip.mark);
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  const n = lengths.push(stick.length) - 1;
  bench.do(
    {
      id,
      kind: 'assemble',
      stage: 'fill',
      title: `Set ${named(strip)} on ${post.mark}`,
      does: {
        act: 'set',
        workpiece: strip.mark,
        into: 'case',
        turn: { length: strip.place.length, width: strip.place.width },
        touches,
        glue: false,
      },
      lines: [
        `Stand it on two pieces of ${stick.name}, cut {${n}} long; the same for the runner opposite, so that both are level.`,
        `Where it comes: ${listWords(told)}.`,
        'Screwed, not glued: it is taken off again to ease it, or when it is worn.',
      ],
      lengths,
    },
    [strip.mark, 'case'],
  );
  const joint = bench.setOut.joints.find((j) => j.part === strip.id);
  if (joint) driveScrews(bench, 'case', joint, 'fill');
}

function slideIn(
  bench: Bench,
  drawer: Drawer,
  wooden: WoodenRunners,
  strip: Part,
  posts: readonly [Part, Part],
): void {
  const l = bench.ledger;
  const into = boxName(bench, drawer);
  const side = partOf(bench, drawer.parts.left);
  const mine = planesOf(l, side);
  const runner = planesOf(l, strip);
  const under = l.less('runner above the box’s lower edge', runner.planes['-z'], mine.planes['-z']);
  const touches: readonly [Touch, Touch, Touch] = [
    { part: side.mark, side: '-x', of: posts[0].mark, face: '+x', gap: bench.set('marking', drawer.beside) },
    { ...offset(bench, mine, '-y', planesOf(l, posts[0])), part: side.mark },
    { part: side.mark, side: '-z', of: strip.mark, face: '-z', gap: bench.set('router', under) },
  ];
  const lengths: Traced[] = [bench.set('router', wooden.width), bench.set('router', wooden.depth)];
  const told = touchesTold(bench, touches, lengths);
  setInCase(bench, drawer, {
    id: `${side.mark}/slide-in`,
    title: `Slide the ${into} onto its runners, between ${posts[0].mark} and ${posts[1].mark}`,
    touches,
    lines: [
      'Its grooves, {0} wide and {1} deep, go over both runners from their front ends. Where it binds, look for the shine and take a shaving off the runner there; never force it.',
      `Where it stands: ${listWords(told)}.`,
    ],
    lengths,
  });
}

function tryIt(bench: Bench, drawer: Drawer, strips: readonly [Part, Part]): void {
  const [left, right] = [partOf(bench, drawer.parts.left), partOf(bench, drawer.parts.right)];
  const travel = bench.set('marking', drawer.travel, 'down');
  const rest = bench.ledger.less('how much of the runners still carries it', strips[0].length, travel);
  const carried = bench.set('marking', rest, 'down');
  bench.do(
    {
      id: `${left.mark}/travel`,
      kind: 'hang',
      stage: 'fill',
      title: `Try the whole way of the ${boxName(bench, drawer)}`,
      does: {
        act: 'draw-out',
        sides: [left.mark, right.mark],
        runners: [strips[0].mark, strips[1].mark],
        into: 'case',
        travel,
        moves: whatMoves(bench, drawer),
      },
      lines: [
        `Draw it out {0}: {1} of the runners still carries it. Load it with ${trialLoad(bench.job.shop.units)}; it may sink a little at the front, and neither rub nor drop.`,
        'The front ends of the runners stop it. Ease both alike until the front comes as far in as it should.',
        'Wax runners and grooves when the finish is dry: candle or paraffin, no oil.',
      ],
      lengths: [travel, carried],
    },
    ['case'],
  );
}
