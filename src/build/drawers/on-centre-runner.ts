import { SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CentreRunner, Drawer, Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import { CAUTION, glueCautions } from '../cautions.ts';
import { clampsAlong } from '../glue/clamps-needed.ts';
import type { Touch } from '../operation.ts';
import { offset, outermost } from '../seating.ts';
import { touchesTold } from '../touch-words.ts';
import { listWords, sideWords } from '../words.ts';
import { boxName, named, partOf } from './in-words.ts';
import { setInCase } from './set-in-case.ts';
import { whatMoves } from './what-moves.ts';

/** The box slid in over its runner, and its whole way tried. */
export function onCentreRunner(bench: Bench, drawer: Drawer, centre: CentreRunner): void {
  const runner = partOf(bench, centre.runner);
  const guides = [partOf(bench, centre.guides[0]), partOf(bench, centre.guides[1])] as const;
  standIn(bench, drawer);
  tryIt(bench, drawer, centre, runner, guides);
}

/** Glues runners to what will be below drawers, and guides to their bottoms, while those lie on the bench, where clamps reach. */
export function glueCentreRunners(bench: Bench): void {
  for (const drawer of bench.setOut.drawers) {
    const { centre } = drawer;
    if (!centre) continue;
    const [runner, left, right] = [centre.runner, ...centre.guides].map((id) => partOf(bench, id)) as [
      Part,
      Part,
      Part,
    ];
    const bottom = partOf(bench, drawer.parts.bottom);
    glueOn(bench, runner, partOf(bench, drawer.below), 'up');
    glueOn(bench, left, bottom, 'down');
    glueOn(bench, right, bottom, 'down', {
      first: left,
      line: `Between the two guides goes an offcut of the strip that ${runner.mark} is made of, with slips of card on either side, {card} thick: it must pass from end to end, hardly loose.`,
      card: bench.ledger.ratio('half of the play', centre.play, SETTING_OUT.half),
    });
  }
}

/** A strip on a face of a board, measured from its left and front sides, or from the guide that is on already. */
function glueOn(
  bench: Bench,
  strip: Part,
  board: Part,
  way: 'up' | 'down',
  beside?: { readonly first: Part; readonly line: string; readonly card: Traced },
): void {
  const mine = planesOf(bench.ledger, strip);
  const from = (side: '-x' | '-y') => offset(bench, mine, side, outermost(bench, board, side));
  const touches: readonly [Touch, Touch, Touch] = [
    way === 'up' ? { side: '-z', of: board.mark, face: '+z' } : { side: '+z', of: board.mark, face: '-z' },
    beside ? besideGuide(bench, mine, beside.first) : from('-x'),
    from('-y'),
  ];
  const lengths: Traced[] = [];
  const words = listWords(touchesTold(bench, touches, lengths));
  bench.do(
    {
      id: `${strip.mark}/edge`,
      kind: 'edge',
      stage: 'edging',
      title: `Glue ${named(strip)} ${way === 'up' ? 'on' : 'under'} ${named(board)}`,
      does: {
        act: 'edge',
        pairs: [{ strip: strip.mark, board: board.mark }],
        turn: { length: strip.place.length, width: strip.place.width },
        boardTurn: { length: board.place.length, width: board.place.width },
        touches: touches.map((t) => (t.of === board.mark ? { ...t, of: 'board' } : t)) as never,
      },
      tool: 'clamp',
      clamps: clampsAlong(toMm(bench.ledger.ticks(strip.length))),
      together: { name: `${strip.mark}/runner`, last: true },
      lines: [
        ...(way === 'down'
          ? [
              `${board.mark} lies with its ${sideWords(board, 'under')} up, its front edge towards you: what will be its left side is on your right.`,
            ]
          : []),
        `Where it comes: ${words}. Mark that at both of its ends, and draw the line: it lies square to the front.`,
        ...(beside ? [beside.line.replace('{card}', `{${lengths.push(beside.card) - 1}}`)] : []),
        'A thin film of glue, rubbed to and fro until it grabs; a straight batten on it, and the clamps over that, pads on the other side. Wipe out what comes beside it: nothing may stand where it runs.',
      ],
      lengths,
      cautions: glueCautions(bench),
    },
    [strip.mark, board.mark],
  );
}

/** So far from the first guide as the runner is wide, and slips of card. */
function besideGuide(bench: Bench, mine: ReturnType<typeof planesOf>, first: Part): Touch {
  const l = bench.ledger;
  const gap = l.less('from guide to guide', mine.planes['-x'], planesOf(l, first).planes['+x']);
  return { side: '-x', of: first.mark, face: '+x', gap: bench.set('marking', gap) };
}

function standIn(bench: Bench, drawer: Drawer): void {
  const l = bench.ledger;
  const into = boxName(bench, drawer);
  const [side, left, below] = [drawer.parts.left, drawer.posts[0], drawer.below].map((id) =>
    partOf(bench, id),
  ) as [Part, Part, Part];
  const touches: readonly [Touch, Touch, Touch] = [
    { part: side.mark, side: '-x', of: left.mark, face: '+x', gap: bench.set('marking', drawer.beside) },
    { ...offset(bench, planesOf(l, side), '-y', planesOf(l, left)), part: side.mark },
    { part: side.mark, side: '-z', of: below.mark, face: '+z' },
  ];
  const lengths: Traced[] = [];
  setInCase(bench, drawer, {
    id: `${side.mark}/slide-in`,
    title: `Slide the ${into} in over its runner`,
    touches,
    lines: [
      `Once all glue has set. Its guides go over the runner from the front. Where it stands: ${listWords(touchesTold(bench, touches, lengths))}.`,
      'Where it binds, look for the shine, and take a shaving off the guide there; never off the runner.',
    ],
    lengths,
  });
}

function tryIt(
  bench: Bench,
  drawer: Drawer,
  centre: CentreRunner,
  runner: Part,
  guides: readonly [Part, Part],
): void {
  const [left, right, below] = [drawer.parts.left, drawer.parts.right, drawer.below].map((id) =>
    partOf(bench, id),
  ) as [Part, Part, Part];
  const post = partOf(bench, drawer.posts[0]);
  const travel = bench.set('marking', drawer.travel, 'down');
  const rest = bench.ledger.less('how much of the runner still guides it', runner.length, travel);
  const guided = bench.set('marking', rest, 'down');
  bench.do(
    {
      id: `${left.mark}/travel`,
      kind: 'hang',
      stage: 'fill',
      title: `Try the whole way of the ${boxName(bench, drawer)}`,
      does: {
        act: 'draw-out',
        guided: { on: below.mark, edges: [left.mark, right.mark] },
        sides: [guides[0].mark, guides[1].mark],
        runners: [runner.mark, runner.mark],
        into: 'case',
        travel,
        moves: [...whatMoves(bench, drawer), ...guides.map((g) => g.mark)],
      },
      lines: [
        `Draw it out {0}: {1} of the runner still guides it, and what is {2} above it keeps it from tipping. There pencil a line down the outer face of ${left.mark} along the front edge of ${post.mark}: nothing stops the drawer when it is drawn out further.`,
        'Push at one corner of its front: it must neither rack nor rub on the uprights.',
        `The front end of ${runner.mark} stops it. Ease that until the front comes as far in as it should.`,
        'Wax the runner, the guides and the lower edges of the sides when the finish is dry: candle or paraffin, no oil.',
      ],
      lengths: [travel, guided, centre.above],
      cautions: [CAUTION.noStop],
    },
    ['case'],
  );
}
