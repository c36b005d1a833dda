import { DRAWERS } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Drawer } from '../../setting-out/index.ts';
import { trialLoad } from '../amounts.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import type { Touch } from '../operation.ts';
import { offset } from '../seating.ts';
import { touchesTold } from '../touch-words.ts';
import { listWords } from '../words.ts';
import { boxName, partOf } from './in-words.ts';
import { setInCase } from './set-in-case.ts';
import { whatMoves } from './what-moves.ts';

/** Runners on, box in, and along its whole way. */
export function onBoughtRunners(bench: Bench, drawer: Drawer, runners: NonNullable<Drawer['runner']>): void {
  const l = bench.ledger;
  const into = boxName(bench, drawer);
  const [left, right] = [partOf(bench, drawer.parts.left), partOf(bench, drawer.parts.right)];
  const posts = [partOf(bench, drawer.posts[0]), partOf(bench, drawer.posts[1])] as const;
  const below = partOf(bench, drawer.below);
  const runner = bench.job.shop.rack.runners?.find((r) => r.id === runners.id);
  const name = runner?.name ?? runners.id;
  const screw = bench.job.shop.rack.screws.find((s) => s.id === runners.screw)!;
  const mine = planesOf(l, left);
  const post = planesOf(l, posts[0]);
  const floor = planesOf(l, below);
  const gapX = bench.set('marking', l.less('room for the runner', mine.planes['-x'], post.planes['+x']));
  const touches: readonly [Touch, Touch, Touch] = [
    { part: left.mark, side: '-x', of: posts[0].mark, face: '+x', gap: gapX },
    { ...offset(bench, mine, '-y', post), part: left.mark },
    {
      part: left.mark,
      side: '-z',
      of: below.mark,
      face: '+z',
      gap: bench.set('marking', l.less('box above what is below', mine.planes['-z'], floor.planes['+z'])),
    },
  ];
  const line = bench.set('marking', runners.line);
  const height = bench.set(
    'marking',
    l.less('line of the runner above what is below', runners.height, floor.planes['+z']),
  );
  const stick = bench.gauges.use(height, `${left.mark}/runners`, left.mark);
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  setInCase(bench, drawer, {
    id: `${left.mark}/runners`,
    title: `Put the ${into} on its runners, between ${posts[0].mark} and ${posts[1].mark}`,
    touches,
    tool: 'drill',
    lines: [
      `Take a pair of ${name} apart. The drawer’s halves go on ${left.mark} and ${right.mark}, front ends level with the box’s front: their middle ${put(line)} above the lower edge, over the pilots.`,
      `The case’s halves on ${posts[0].mark} and ${posts[1].mark}: cut ${stick.name} twice, ${put(stick.length)} long, from ${below.mark} up to the middle of the runner; both sides by the same stick, so that both are level.`,
      'Only the screws in slotted holes at first, two to each half, until the drawer runs; then the others.',
      `Slide the box in. Where it stands: ${listWords(told)}.`,
    ],
    lengths,
  });
  const travel = bench.set('marking', drawer.travel, 'down');
  const screws = 2 * (runners.caseScrews.length + runners.drawerScrews.length);
  const { thick } = runners;
  bench.do(
    {
      id: `${left.mark}/travel`,
      kind: 'hang',
      stage: 'fill',
      title: `Screw the runners of the ${into}, and try its whole way`,
      does: {
        act: 'runners',
        sides: [left.mark, right.mark],
        posts: [posts[0].mark, posts[1].mark],
        into: 'case',
        thickness: thick,
        screw: runners.screw,
        length: runners.screwLength,
        diameter: runners.screwDiameter,
        count: screws,
        travel,
        moves: whatMoves(bench, drawer),
      },
      tool: 'drill',
      times: 2,
      lines: [
        `${screws} × ${screw.name ?? screw.id}, {0} long and {1} thick, in the pilots: by hand at the end, they strip easily.`,
        'Between box and upright each runner has {2}, up to {4} more: where the case came out wider, pack the runner with card; where it is narrower, plane the box, not the runner.',
        `Draw it out {3}, load it with ${trialLoad(bench.job.shop.units)}, and push it in again: nothing may rub or drop.`,
      ],
      lengths: [runners.screwLength, runners.screwDiameter, thick, travel, bench.rule(DRAWERS.runnerWider)],
    },
    ['case'],
  );
}
