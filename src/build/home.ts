import { treeOf } from '../job/index.ts';
import { DOORS, SETTING_OUT } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { Bench } from './bench.ts';
import { carryHome } from './carry-home.ts';
import { unitsOf } from './case-units.ts';
import { CAUTION } from './cautions.ts';
import { fitFillers } from './filler-work.ts';
import { hookOn } from './hook-on.ts';
import { levellerLines } from './levellers.ts';
import { liftCautions } from './lifting.ts';
import { markWords } from './mark-words.ts';
import { packingLines } from './packing.ts';
import { scribeTops } from './scribed-tops.ts';
import { waxGrooves } from './sliding.ts';
import { EACH_HOLDS, wallLines } from './wall-fixings.ts';
import { capital, counted, listWords } from './words.ts';

/** The way to its place, and what is done there: it is set, levelled, fixed; then what came out for the finish goes in. */
export function bringHome(bench: Bench): void {
  carryHome(bench);
  const { cleats } = bench.setOut;
  const onCleats = new Set(cleats.flatMap((c) => [c.onCase, c.spacer]));
  const rails = bench.setOut.parts
    .filter((p) => p.mark.startsWith('T') && !onCleats.has(p.id))
    .map((p) => p.mark);
  hookOn(bench, cleats);
  if (rails.length > 0) hang(bench, rails);
  else if (cleats.length === 0) {
    level(bench);
    fixToWall(bench);
  }
  const scribed = bench.setOut.scribedTops.length > 0;
  // Their screws are driven from inside, before that is full; and they lie on the fillers.
  if (scribed) {
    fitFillers(bench);
    scribeTops(bench);
  }
  putBack(bench);
  waxGrooves(bench);
  if (!scribed) fitFillers(bench);
}

function level(bench: Bench): void {
  const { doors, drawers, sliding, levellers } = bench.setOut;
  const running = [
    ...(doors.length + sliding.length > 0 ? ['doors'] : []),
    ...(drawers.length > 0 ? ['drawers'] : []),
  ];
  const lengths: Traced[] = [];
  bench.do(
    {
      id: 'home/level',
      kind: 'level',
      stage: 'home',
      title: 'Level it',
      does: { act: 'other', on: ['case'] },
      lines: [
        ...(levellers.length > 0
          ? levellerLines(bench, lengths)
          : [
              ...packingLines(bench, lengths),
              unitsOf(bench).length > 1
                ? 'Lay a long level along all of it and across each case, and correct with thin packing under the corners, until nothing rocks; both diagonals of each front as they were in the shop.'
                : 'Level it from side to side and from front to back with thin packing under its corners, until it doesn’t rock; both diagonals of the front as they were in the shop.',
            ]),
        ...(running.length > 0
          ? [
              `${capital(listWords(running))} run true only in a case that stands true, so this comes before they go in.`,
            ]
          : []),
      ],
      lengths,
    },
    ['case'],
  );
}

/** Pieces no higher than this stand by themselves as a rule; common practice, and not where children climb. */
const LOW_MM = 600;

function fixToWall(bench: Bench): void {
  const { setOut, ledger } = bench;
  const lengths: Traced[] = [];
  const under =
    setOut.lids.length > 0
      ? 'with an angle bracket at each side, inside, close under the lid'
      : 'with an angle bracket under its top';
  const several = unitsOf(bench).length > 1;
  const low =
    toMm(ledger.ticks(setOut.overall.height)) <= LOW_MM && setOut.drawers.length + setOut.doors.length === 0;
  bench.do(
    {
      id: 'home/set-up',
      kind: 'anchor',
      stage: 'home',
      title: 'Fix it to the wall',
      does: { act: 'other', on: ['case'] },
      lines: low
        ? [
            `It is low. Where it stays in its place, fix it ${under}, above all where children climb about.`,
            'What is carried about, as a stool is, stays loose: soft feet under it, and nobody stands at its edge.',
          ]
        : [
            ...(several
              ? [
                  `Every case by itself${tallFirst(bench)}: what holds one to the next is no fixing for another.`,
                ]
              : []),
            `Fix ${several ? 'each' : 'it'} to the wall near its top: ${setOut.lids.length > 0 ? under : 'with an angle bracket, or through a batten screwed under the top'}. A thin back alone doesn’t hold it. Put tape where a finished face is marked and bored: pencil stays on the tape, and the film doesn’t chip.`,
            ...(bench.job.design.records.some((r) => r.kind === 'room' && r.wall !== undefined)
              ? wallLines(bench, {}, lengths)
              : []),
            'Load what is lowest first.',
          ],
      lengths,
      cautions: [CAUTION.tip],
    },
    ['case'],
  );
}

/** Of cases of several heights the tall ones are fixed first, which tip most easily. */
function tallFirst(bench: Bench): string {
  const { ledger: l } = bench;
  const cases = unitsOf(bench).flatMap(({ boxes }) => boxes);
  const height = ({ left }: (typeof cases)[number]) => l.ticks(left.length);
  const [most, least] = [Math.max(...cases.map(height)), Math.min(...cases.map(height))];
  const tall = cases.filter((box) => height(box) === most);
  return most === least ? '' : `, the tallest first (${listWords(tall.map((box) => box.words))})`;
}

function hang(bench: Bench, rails: readonly string[]): void {
  const rail = bench.setOut.parts.find((p) => p.mark === rails[0])!;
  const half = bench.ledger.ratio('middle of the rail', rail.width, SETTING_OUT.half);
  const behind = bench.setOut.parts.find((p) => p.mark.startsWith('F'));
  const boards = bench.ledger.sum(
    'boards that an anchor goes through',
    rail.thickness,
    ...(behind ? [behind.thickness] : []),
  );
  const lengths: Traced[] = [];
  const fixings = wallLines(bench, { boards }, lengths);
  const line = lengths.push(bench.set('marking', half)) - 1;
  const masonry = treeOf(bench.job).all('room')[0]?.wall === 'masonry';
  bench.do(
    {
      // Where strips of cleats went to the wall before, theirs is the first card of it.
      id: bench.setOut.cleats.length > 0 ? 'home/hang' : 'home/set-up',
      kind: 'anchor',
      stage: 'home',
      title: 'Hang it on the wall',
      does: { act: 'other', on: ['case'] },
      lines: [
        // Plugs go where the holes of the rail say, so the wall is bored when it has been held there.
        ...(masonry ? fixings.slice(0, 1) : fixings),
        `Draw a level line on the wall where the middles of ${listWords(rails)} come: {${line}} below the underside of the top.`,
        'Tape where the finished rail is marked and bored: pencil stays on the tape, and the film doesn’t chip.',
        `Bore through the rail${behind ? ' and the back' : ''}, ${masonry ? '' : 'at every stud and '}near both ends: two anchors in each rail at least, each as wide as its maker asks. ${EACH_HOLDS}`,
        ...(masonry
          ? [
              'Rest it on a batten screwed to the wall, these holes on the line, and mark the wall through them; take it down again.',
              ...fixings.slice(1),
            ]
          : []),
        `Rest it on ${masonry ? 'the batten again' : 'a batten screwed to the wall'} while the anchors go in; then take the batten away, pull at the front edge, and load it by degrees.`,
      ],
      lengths,
      cautions: [...liftCautions(bench, bench.setOut.parts), CAUTION.hang],
    },
    ['case'],
  );
}

function drawersIn(drawers: Bench['setOut']['drawers']): string {
  const what = drawers.length > 1 ? 'the drawers' : 'the drawer';
  return drawers.some((d) => d.runner)
    ? `The halves of the runners back on ${drawers.length > 1 ? 'their drawers' : 'the drawer'}, and ${what} in.`
    : `${capital(what)} in.`;
}

/** Doors by their uppermost hinge; a flap, which turns about its lower or upper edge, has none. */
function doorsOn(doors: Bench['setOut']['doors']): string {
  const flaps = doors.filter((d) => d.hung === 'above' || d.hung === 'below').length;
  return listWords([
    ...counted(
      doors.length - flaps,
      'the door on, the uppermost hinge first',
      'the doors on, the uppermost hinge first',
    ),
    ...counted(flaps, 'the flap on', 'the flaps on'),
  ]);
}

/** Doors, drawers and loose shelves that came out for the finish. */
function putBack(bench: Bench): void {
  const { doors, drawers, lids, pinned, parts } = bench.setOut;
  const mark = (id: string) => parts.find((p) => p.id === id)!.mark;
  const hung = doors.map((d) => mark(d.part));
  const flaps = doors.filter((d) => d.held?.stays).map((d) => mark(d.part));
  const over = lids.map((lid) => mark(lid.part));
  const fronts = drawers.map((d) => mark(d.parts.face));
  const shelves = pinned.map((s) => mark(s.part));
  if (hung.length + over.length + fronts.length + shelves.length === 0) return;
  const gap = doors[0]?.gap ?? drawers[0]?.gap;
  const lengths = gap === undefined ? [] : [bench.set('marking', gap)];
  const before = doors.filter((d) => d.hang === 'overlay').map((d) => mark(d.part));
  const bumper = before.length > 0 ? lengths.push(bench.rule(DOORS.standOff)) - 1 : -1;
  bench.do(
    {
      id: 'home/put-back',
      kind: 'adjust',
      stage: 'home',
      title: `Put ${listWords([...[hung, over, shelves].filter((m) => m.length > 0).map(markWords), ...(fronts.length > 0 ? [`the drawer${fronts.length > 1 ? 's' : ''} of ${listWords(fronts)}`] : [])])} back`,
      does: { act: 'other', on: [...hung, ...over, ...shelves, ...fronts] },
      times: hung.length + over.length + 0.5 * fronts.length + 0.25 * shelves.length,
      lines: [
        ...(shelves.length > 0
          ? [`Pins and ${shelves.length > 1 ? 'shelves' : 'shelf'} where they were.`]
          : []),
        ...(fronts.length > 0 ? [drawersIn(drawers)] : []),
        ...(hung.length > 0
          ? [
              `The hinges into the same holes, by hand; ${doorsOn(doors)}.`,
              ...(flaps.length > 0
                ? [
                    `Somebody holds ${listWords(flaps)} until the stays are on; then try once more where it stays by itself.`,
                  ]
                : []),
            ]
          : []),
        ...(over.length > 0
          ? [
              'The lid on its hinges, and somebody holds it until its stays are on; then try once more where it stays by itself.',
            ]
          : []),
        ...(before.length > 0
          ? [
              `Stick two bumpers, {${bumper}} thick, on the inside of ${markWords(before)}${before.length > 1 ? ' each' : ''}, where the free edge meets the case: one near each end of it.`,
            ]
          : []),
        ...(gap !== undefined
          ? ['Set the gaps once more, now that it stands where it stays: {0} by the drawing.']
          : []),
      ],
      lengths,
    },
    ['case', ...hung, ...over, ...shelves, ...fronts],
  );
}
