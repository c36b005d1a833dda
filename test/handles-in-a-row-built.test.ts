import { expect, test } from 'vitest';
import type { Operation } from '../src/build/index.ts';
import { checkJob } from '../src/job/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { hallCupboard } from './doors/door-job.ts';
import { HANDLE_STRIP } from './doors/handle-strip.ts';
import { changedChest } from './drawers/chest-job.ts';

const BAR = { id: 'bar', name: 'Bar pull', holes: '64 mm', thread: '4 mm', deep: '8 mm', length: '80 mm' };
const screw = (id: string, kind: string, length: string) => ({
  id,
  kind,
  length,
  diameter: '4 mm',
  head: '8 mm',
});

interface Plain {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: { readonly rack: unknown };
}

/** A document with handles or pulls on one of its records, and what holds them on its rack. */
function fitted<P extends Plain>(document: P, record: object): P {
  const rack = document.shop.rack as Record<string, object[]>;
  document.design.records.push({ id: 'grip', ...record });
  rack.pulls = [BAR];
  rack.lots!.push(HANDLE_STRIP);
  rack.screws!.push(
    screw('long', 'countersunk', '30 mm'),
    ...[18, 25, 40].map((mm) => screw(`m4x${mm}`, 'machine', `${mm} mm`)),
  );
  return document;
}

const chest = (record: object) => fitted(changedChest({}), { parent: 'small', ...record });
const cupboard = (record: object) => fitted(hallCupboard(), { parent: 'bag-doors', ...record });
const codes = (of: ReturnType<typeof built>) => [...new Set(of.drawn.snags.map((s) => s.code))];

/** The middles of the holes of pulls in the first front that has some, along its length, mm. */
function bored({ drawn }: ReturnType<typeof built>): readonly number[] {
  const part = drawn.parts.find((p) => p.id === drawn.pulls[0]!.part)!;
  return part.features.flatMap((f) =>
    f.kind === 'hole' && f.id.includes('#grip:') ? [drawn.ledger.ticks(f.at[0]) / 3200] : [],
  );
}

test('two pulls on each drawer stand at its quarter points, marked from the middle to both sides', async () => {
  const of = built(chest({ kind: 'pull', count: 2 }));
  expect(of.drawn.snags).toEqual([]);
  // A front of 520.6 mm: its quarter points are 130 mm from the middle, the holes 32 mm to both sides of these.
  expect(bored(of)).toEqual([98.3, 162.3, 358.3, 422.3]);
  const card = of.build.operations.find((o) => o.id === 'N2/drill-show-clearance')!;
  expect(card.lines[0]).toMatch(/^Find the middle between the left end and the right end/);
  expect(card.lines[2]).toBe('{1} from the lower edge: {2} and {3} to each side of the middle.');
  const pull = of.build.operations.find((o) => o.does.act === 'pull')!;
  expect(pull.title).toBe('Screw 2 × Bar pull on N2 (front of drawer 1 of trays)');
  expect(pull.does).toMatchObject({ count: 4 });
  expect(await dryFaults(of)).toEqual([]);
  const one = (o: Operation) => (o === pull ? { ...o, does: { ...o.does, count: 2 } as never } : o);
  expect((await dryFaults(of, one)).map((f) => f.code)).toEqual(['no-hole']);
});

test('one alone in the middle of its front is marked from there, both ways', async () => {
  const of = built(chest({ kind: 'pull' }));
  expect(of.drawn.snags).toEqual([]);
  const card = of.build.operations.find((o) => o.id === 'N2/drill-show-clearance')!;
  expect(card.lines.slice(0, 2)).toEqual([
    expect.stringMatching(/^Find the middle between the left end and the right end: /),
    expect.stringMatching(/^Find the middle between the lower edge and the upper edge: /),
  ]);
  expect(card.lines[3]).toBe(
    'On the middle between the lower edge and the upper edge: {1} to each side of the middle between the left end and the right end.',
  );
  expect(of.drawn.ledger.ticks(card.lengths[1]!) / 3200).toBe(32);
  expect(await dryFaults(of)).toEqual([]);
  // Aside of the middle it is measured from its side.
  const aside = built(chest({ kind: 'pull', fromRight: '110 mm' }));
  const lines = aside.build.operations.find((o) => o.id === 'N2/drill-show-clearance')!.lines;
  expect(lines.some((l) => l.includes('left end and the right end'))).toBe(false);
});

test('places are told in the words of rows of holes', () => {
  const at = (more: object) => bored(built(chest({ kind: 'pull', ...more })));
  expect(at({ count: 2, apart: '200 mm' })).toEqual([128.3, 192.3, 328.3, 392.3]);
  expect(at({ count: 2, apart: '200 mm', fromLeft: '120 mm' })).toEqual([88, 152, 288, 352]);
  expect(at({ count: 2, apart: '200 mm', fromLeft: '230 mm', measured: 'middle' })).toEqual([
    98, 162, 298, 362,
  ]);
  expect(at({ count: 2, fromLeft: '110 mm', fromRight: '120 mm' })).toEqual([78, 142, 368.6, 432.6]);
  expect(at({ count: 3, fromLeft: '110 mm', fromRight: '110 mm' })).toEqual([
    78, 142, 228.3, 292.3, 378.6, 442.6,
  ]);
  // One alone may stand aside as well.
  expect(at({ fromRight: '110 mm' })).toEqual([378.6, 442.6]);
});

test('shop-made handles in a row are parts of their own, set from the side that each is nearer to', async () => {
  const of = built(chest({ kind: 'handle', strip: 'oak', count: 2 }));
  expect(of.drawn.snags).toEqual([]);
  const handles = of.drawn.parts.filter((p) => p.record === 'grip');
  expect(handles.slice(0, 2).map((p) => p.name)).toEqual([
    'left handle of the front of drawer 1 of trays',
    'right handle of the front of drawer 1 of trays',
  ]);
  const lines = of.build.operations.filter((o) => /^U[12]\/set$/.test(o.id)).map((o) => o.lines[1]);
  expect(lines[0]).toMatch(/its left side \{0\} in from the left side of N2/);
  expect(lines[1]).toMatch(/its right side \{0\} in from the right side of N2/);
  expect(await dryFaults(of)).toEqual([]);
});

test('on a pair of doors they stand one above the other; across, the right door mirrors the left', async () => {
  const up = built(cupboard({ kind: 'handle', strip: 'oak', count: 2 }));
  expect(codes(up)).toEqual([]);
  expect(up.drawn.parts.filter((p) => p.record === 'grip').map((p) => p.name.split(' ')[0])).toEqual([
    'lower',
    'upper',
    'lower',
    'upper',
  ]);
  expect(await dryFaults(up)).toEqual([]);
  const across = built(
    cupboard({ kind: 'pull', count: 2, row: 'across', apart: '120 mm', fromLeft: '60 mm' }),
  );
  expect(codes(across)).toEqual([]);
  const l = across.drawn.ledger;
  const off = across.drawn.doors
    .filter((d) => d.record === 'bag-doors')
    .map((d) => {
      const part = across.drawn.parts.find((p) => p.id === d.part)!;
      const x = part.features.flatMap((f) =>
        f.kind === 'hole' && f.id.includes('#grip:') ? [l.ticks(f.at[1]) / 3200] : [],
      );
      // Of doors the width runs from the right to the left.
      const fromLeft = x.map((w) => l.ticks(part.width) / 3200 - w);
      return [...new Set(d.hung === 'left' ? fromLeft : x)].sort((a, b) => a - b);
    });
  expect(off[0]).toEqual([60, 180]);
  expect(off[1]).toEqual([60, 180]);
  expect(await dryFaults(across)).toEqual([]);
});

test('they stand about the middle of what is named, and one alone does as well', async () => {
  const shelf = built(cupboard({ kind: 'handle', strip: 'oak', about: 'bags' }));
  expect(codes(shelf)).toEqual([]);
  const l = shelf.drawn.ledger;
  const opening = shelf.drawn.openings.find((o) => o.id === 'bags')!;
  const middle = (l.ticks(opening.box.min[2]) + l.ticks(opening.box.max[2])) / 2;
  for (const p of shelf.drawn.parts.filter((h) => h.record === 'grip'))
    expect(Math.abs(l.ticks(p.place.origin[2]) + l.ticks(p.length) / 2 - middle)).toBeLessThanOrEqual(1);
  expect(await dryFaults(shelf)).toEqual([]);
  // All drawers of a stack stand about one opening.
  expect(codes(built(chest({ kind: 'pull', count: 2, apart: '200 mm', about: 'trays' })))).toEqual([]);
});

test('what does not fit is told with its cure', () => {
  const of = (record: object) => built(chest({ kind: 'pull', count: 2, ...record }));
  const near = of({ apart: '90 mm' });
  expect(codes(near)).toEqual(['handles.too-near']);
  expect(near.drawn.snags[0]).toMatchObject({
    where: { path: 'design/records/grip/apart' },
    cures: [{ edits: [{ record: 'grip', field: 'apart', value: '100 mm' }] }],
  });
  expect(codes(of({ apart: '100 mm' }))).toEqual([]);
  expect(codes(of({ apart: '450 mm' }))).toEqual(['handles.off-front']);
  expect(codes(of({ count: 6 }))).toEqual(['handles.too-near']);
  // The screw would stand in a side of the box.
  expect(codes(of({ fromLeft: '60 mm', fromRight: '60 mm' }))).toEqual(['pulls.no-place']);
  expect(codes(of({ fromLeft: '80 mm', fromRight: '80 mm' }))).toEqual([]);
});

test.each([
  ['design.handle-row', 'apart', { apart: '200 mm' }],
  ['design.handle-row', 'row', { row: 'up' }],
  ['design.handle-row', 'apart', { count: 2, fromLeft: '90 mm' }],
  ['design.handle-row', 'measured', { count: 2, measured: 'middle' }],
  ['design.placed-twice', 'fromRight', { fromLeft: '90 mm', fromRight: '90 mm' }],
  ['design.placed-twice', 'fromRight', { count: 2, apart: '90 mm', fromLeft: '90 mm', fromRight: '90 mm' }],
  ['design.placed-twice', 'fromAbove', { count: 2, fromBelow: '40 mm', fromAbove: '40 mm' }],
  ['design.handle-place', 'fromEdge', { fromEdge: '40 mm' }],
  ['document.no-such-record', 'about', { about: 'chest' }],
  ['design.handle-row', 'about', { count: 2, about: 'trays' }],
  ['design.handle-row', 'about', { fromLeft: '90 mm', about: 'trays' }],
])('%s at %s', (code, field, more) => {
  const read = checkJob(chest({ kind: 'pull', ...more }));
  expect(!read.ok && read.snags.map((s) => [s.code, s.where.path])).toEqual([
    [code, `design/records/grip/${field}`],
  ]);
});
