import type { Traced } from '../../measure/index.ts';
import type { CentreRunner, Drawer, Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import { CAUTION } from '../cautions.ts';
import { clampsAlong } from '../glue/clamps-needed.ts';
import type { Touch } from '../operation.ts';
import { offset, outermost, touchWords } from '../seating.ts';
import { listWords } from '../words.ts';
import { boxName, named, partOf } from './in-words.ts';
import { whatMoves } from './what-moves.ts';

/** Guides glued under the bottom, the box slid in over its runner, and its whole way tried. */
export function onCentreRunner(bench: Bench, drawer: Drawer, centre: CentreRunner): void {
  const runner = partOf(bench, centre.runner);
  const guides = [partOf(bench, centre.guides[0]), partOf(bench, centre.guides[1])] as const;
  setGuide(bench, drawer, guides[0], runner);
  setGuide(bench, drawer, guides[1], runner, guides[0]);
  standIn(bench, drawer);
  tryIt(bench, drawer, runner, guides);
}

function told(bench: Bench, touches: readonly Touch[], lengths: Traced[]): string {
  return listWords(
    touches.map((t) => {
      const { words, lengths: more } = touchWords(bench, t, lengths.length);
      lengths.push(...more);
      return words;
    }),
  );
}

/** Glues the runners of drawers to what will be below them while that lies on the bench, where clamps reach. */
export function glueCentreRunners(bench: Bench): void {
  for (const drawer of bench.setOut.drawers)
    if (drawer.centre) glueRunner(bench, partOf(bench, drawer.centre.runner), partOf(bench, drawer.below));
}

function glueRunner(bench: Bench, runner: Part, board: Part): void {
  const mine = planesOf(bench.ledger, runner);
  const from = (side: '-x' | '-y') => offset(bench, mine, side, outermost(bench, board, side));
  const touches: readonly [Touch, Touch, Touch] = [
    { side: '-z', of: board.mark, face: '+z' },
    from('-x'),
    from('-y'),
  ];
  const lengths: Traced[] = [];
  const words = told(bench, touches, lengths);
  bench.do(
    {
      id: `${runner.mark}/edge`,
      kind: 'edge',
      stage: 'edging',
      title: `Glue ${named(runner)} on ${named(board)}`,
      does: {
        act: 'edge',
        pairs: [{ strip: runner.mark, board: board.mark }],
        turn: { length: runner.place.length, width: runner.place.width },
        boardTurn: { length: board.place.length, width: board.place.width },
        touches: touches.map((t) => (t.of === board.mark ? { ...t, of: 'board' } : t)) as never,
      },
      tool: 'clamp',
      clamps: clampsAlong(bench.ledger.ticks(runner.length) / 3200),
      together: { name: `${runner.mark}/runner`, last: true },
      lines: [
        `Where it comes: ${words}. Mark that at both of its ends, and draw the line: it lies square to the front.`,
        'A thin film of glue, rubbed to and fro until it grabs; a straight batten on it, and the clamps over that, pads below. Wipe out what comes beside it: the guides run there.',
      ],
      lengths,
      cautions: [CAUTION.glue],
    },
    [runner.mark, board.mark],
  );
}

/** A guide lies on the bottom of the box, which lies upside down. */
function setGuide(bench: Bench, drawer: Drawer, guide: Part, runner: Part, first?: Part): void {
  const l = bench.ledger;
  const into = boxName(bench, drawer);
  const [side, bottom] = [partOf(bench, drawer.parts.left), partOf(bench, drawer.parts.bottom)];
  const mine = planesOf(l, guide);
  const touches: readonly [Touch, Touch, Touch] = [
    first ? beside(bench, mine, first) : offset(bench, mine, '-x', planesOf(l, side)),
    offset(bench, mine, '-y', planesOf(l, side)),
    { side: '+z', of: bottom.mark, face: '-z' },
  ];
  const lengths: Traced[] = [];
  const words = told(bench, touches, lengths);
  bench.do(
    {
      id: `${guide.mark}/set`,
      kind: 'assemble',
      stage: 'fill',
      title: `Glue ${named(guide)} under ${bottom.mark}`,
      does: {
        act: 'set',
        workpiece: guide.mark,
        into,
        turn: { length: guide.place.length, width: guide.place.width },
        touches,
        glue: true,
      },
      lines: [
        `The box lies upside down; directions are those in the case. Where it comes: ${words}.`,
        first
          ? `Between the two guides goes an offcut of the strip that ${runner.mark} is made of, with a slip of thin card on either side: it must pass from end to end, hardly loose.`
          : 'It runs square to the front: measure at both of its ends.',
        'A thin film of glue, rubbed to and fro until it grabs, and weights.',
      ],
      lengths,
      cautions: [CAUTION.glue],
    },
    [guide.mark, into],
  );
}

/** So far from the first guide as the runner is wide, and slips of card. */
function beside(bench: Bench, mine: ReturnType<typeof planesOf>, first: Part): Touch {
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
  bench.do(
    {
      id: `${side.mark}/slide-in`,
      kind: 'hang',
      stage: 'fill',
      title: `Slide the ${into} in over its runner`,
      does: {
        act: 'set',
        workpiece: into,
        into: 'case',
        turn: { length: '+x', width: '+y' },
        touches,
        glue: false,
      },
      lines: [
        `Once all glue has set. Its guides go over the runner from the front. Where it stands: ${told(bench, touches, lengths)}.`,
        'Where it binds, look for the shine, and take a shaving off the guide there; never off the runner.',
      ],
      lengths,
    },
    [into, 'case'],
  );
}

function tryIt(bench: Bench, drawer: Drawer, runner: Part, guides: readonly [Part, Part]): void {
  const [left, right, below] = [drawer.parts.left, drawer.parts.right, drawer.below].map((id) =>
    partOf(bench, id),
  ) as [Part, Part, Part];
  const travel = bench.set('marking', drawer.travel, 'down');
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
        'Draw it out {0}: a third of the runner still guides it, and what is above keeps it from tipping. Push at one corner of its front: it must neither rack nor rub on the uprights.',
        `The front end of ${runner.mark} stops it. Ease that until the front comes as far in as it should.`,
        'Wax the runner, the guides and the lower edges of the sides when the finish is dry: candle or paraffin, no oil.',
      ],
      lengths: [travel],
    },
    ['case'],
  );
}
