import { expect, test } from 'vitest';
import { built, pieceOf, shelvesAlone } from '../../test/build/built.ts';
import { hallCupboard } from '../../test/doors/door-job.ts';
import type { Traced } from '../measure/index.ts';
import type { Operation } from './operation.ts';

const { build, drawn } = built(shelvesAlone());
const places = (which: (o: Operation) => boolean) =>
  build.operations.flatMap((o, i) => (which(o) ? [i] : []));
const textOf = (o: Operation) => o.lines.join(' ');

test('parts are laid out and marked before anything with a left and a right is worked on them', () => {
  const [laidOut, ...more] = places((o) => o.id === 'parts/lay-out');
  expect(more).toEqual([]);
  const worked = places((o) => ['bevel', 'rabbet', 'pocket', 'drill'].includes(o.does.act));
  expect(worked.length).toBeGreaterThan(0);
  expect(Math.min(...worked)).toBeGreaterThan(laidOut!);
});

// The last bay is what the others leave, so its shelf is cut half a millimetre shorter than the five before it.
test('the six shelves, 360.5 (the last 360) by 363.5 mm, are named as easily turned the wrong way', () => {
  const card = build.operations.find((o) => o.id === 'parts/lay-out')!;
  expect(textOf(card)).toContain('E1–E5 (the grain runs along the {0}, not along the {1})');
  expect(textOf(card)).toContain('E6 (the grain runs along the {2}, not along the {3})');
  expect(card.lengths.map((t) => drawn.ledger.ticks(t) / 3200)).toEqual([360.5, 363.5, 360, 363.5]);
});

test('one setting after the other: mitres, then rabbets, then pockets, then pilot holes', () => {
  const kinds = build.operations.filter((o) => o.stage === 'machine').map((o) => o.kind);
  const runs = kinds.filter((k, i) => k !== kinds[i - 1]);
  expect(runs).toEqual(['mark', 'bevel', 'rabbet', 'pocket', 'drill']);
});

test('every board has a strip glued on before the first is trimmed, as long as there are clamps and daylight', () => {
  const demo = shelvesAlone();
  const tools = demo.shop.tools as readonly Record<string, unknown>[];
  const plenty = tools.map((t) => (t.kind === 'clamp' ? { ...t, count: 40 } : t));
  const hours = [{ days: ['mon', 'tue'], from: '00:00', to: '24:00' }];
  const { operations } = built({ ...demo, shop: { ...demo.shop, tools: plenty, hours } }).build;
  const boards = new Map<string, number>();
  operations.forEach(({ does }, i) => {
    if (does.act === 'edge') for (const { board } of does.pairs) if (!boards.has(board)) boards.set(board, i);
  });
  expect(boards.size).toBe(13);
  expect(Math.max(...boards.values())).toBeLessThan(operations.findIndex((o) => o.does.act === 'flush'));
});

test('a cut that keeps less than the rail’s 200 mm says what carries the rail, and no other does', () => {
  for (const o of build.operations) {
    if (o.does.act !== 'saw' || o.stage !== 'sheets' || o.does.keep !== 'before') continue;
    const narrow = drawn.ledger.ticks(o.does.at) < 200 * 3200;
    expect(textOf(o).includes('narrower than the rail'), o.id).toBe(narrow);
  }
  expect(places((o) => textOf(o).includes('narrower than the rail')).length).toBeGreaterThan(0);
});

test('a case is turned by a card of its own: upright for its top, on its face for its back, upright for the rest', () => {
  const turns = build.operations.filter((o) => o.kind === 'move' && o.id.startsWith('case/'));
  const at = (id: string) => build.operations.findIndex((o) => o.id === id);
  expect(turns.map((o) => o.title)).toEqual([
    'Stand the case upright',
    'Lay the case on its face',
    'Stand the case upright',
  ]);
  const [up, down, upAgain] = turns.map((o) => at(o.id)) as [number, number, number];
  expect(up).toBeLessThan(at('C1/set'));
  expect(down).toBeGreaterThan(at('C1/set'));
  expect(down).toBeLessThan(at('F1/set'));
  // The glue of the back has set by then.
  expect(upAgain).toBeGreaterThan(build.operations.findLastIndex((o) => o.kind === 'cure'));
  expect(upAgain).toBeLessThan(at('finish/prepare'));
  // The top with its edging stands out 24 mm before the sides with theirs, by the drawing.
  const beams = build.operations[down]!;
  expect(beams.lengths.map((t) => drawn.ledger.ticks(t) / 3200)).toEqual([24]);
});

test('it is carried, levelled and fixed before what came out for the finish goes in again', () => {
  const { operations } = built(hallCupboard()).build;
  const home = operations.filter((o) => o.stage === 'home').map((o) => o.kind);
  expect(home).toEqual(['move', 'level', 'anchor', 'adjust']);
});

test('nothing comes between the rehearsal of a glue-up and the glue', () => {
  for (const { id, operations } of build.glueUps) {
    const first = build.operations.findIndex((o) => o.id === operations[0]);
    expect(build.operations[first - 1]!.id).toBe(`${id}/rehearse`);
  }
});

test('a slender strip is not sent under the circular saw without a word', () => {
  const mitres = build.operations.filter((o) => o.does.act === 'bevel' && o.title.includes('edging'));
  expect(mitres.length).toBe(4);
  for (const o of mitres) expect(textOf(o)).toContain('mitre box');
});

test('a back in rabbets is measured from the outside that can be seen', () => {
  const set = build.operations.find((o) => o.does.act === 'set' && o.does.workpiece === 'F1')!;
  if (set.does.act !== 'set') throw new Error('not a set');
  expect(set.does.touches[0]).toMatchObject({ side: '-x', of: 'A1', face: '-x' });
});

test('holes through a back are printed as they are executed: from the edges that the act counts from', () => {
  const back = build.operations.find((o) => o.id.startsWith('F1/drill'))!;
  if (back.does.act !== 'drill') throw new Error('not a drill');
  const t = (x: Traced) => drawn.ledger.ticks(x);
  const printed = back.lengths.map(t);
  for (const place of back.does.at)
    for (const x of place) expect(printed).toContain(x === 'middle' ? x : t(x));
});

test('a top between the sides goes in before the case is checked for square', () => {
  const shelves = built(
    pieceOf(
      { id: 'shelves', kind: 'piece', name: 'Shelves', width: '600 mm', height: '700 mm', depth: '300 mm' },
      { id: 'case', kind: 'case', parent: 'shelves', board: 'birch18' },
      { id: 'inside', kind: 'opening', parent: 'case' },
      { id: 'boards', kind: 'shelf', parent: 'inside', count: 2 },
      { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'applied' },
    ),
  );
  const small = shelves.build.operations;
  const at = (id: string) => small.findIndex((o) => o.id === id);
  expect(at('C1/set')).toBeGreaterThan(-1);
  expect(at('C1/set')).toBeLessThan(at('case/check-square'));
  const holes = small.find((o) => o.id.startsWith('F1/drill'))!;
  if (holes.does.act !== 'drill') throw new Error('not a drill');
  const ticks = (x: Traced) => shelves.drawn.ledger.ticks(x);
  for (const [, across] of holes.does.at)
    expect(holes.lengths.map(ticks)).toContain(across === 'middle' ? across : ticks(across));
});
