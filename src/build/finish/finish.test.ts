import { expect, test } from 'vitest';
import { built, builtExample, demoDocument, pieceOf } from '../../../test/build/built.ts';

const plainCase = (height: string, shelves: number) =>
  pieceOf(
    { id: 'piece', kind: 'piece', name: 'Box', width: '700 mm', height, depth: '320 mm' },
    { id: 'case', kind: 'case', parent: 'piece', board: 'birch18', joints: 'pocket-screws' },
    { id: 'inside', kind: 'opening', parent: 'case' },
    { id: 'rows', kind: 'shelf', parent: 'inside', count: shelves },
    { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'applied' },
  );

test('both sides, the top and the insides of a plain case are of their classes, and litres follow from coats', () => {
  const { build } = built(plainCase('600 mm', 2));
  const plan = build.finishing!;
  const of = new Map(plan.classes.map((c) => [c.surface, c]));
  // Two sides of 600 by 314 (the back takes 6 of 320 mm) are seen from outside; lid and shelves are 18 mm thick.
  expect(of.get('top')!.areaM2).toBeGreaterThan(0);
  expect(of.get('show')!.areaM2).toBeCloseTo(2 * 0.6 * 0.314, 2);
  expect(of.get('inside')!.areaM2).toBeGreaterThan(of.get('show')!.areaM2);
  expect(of.get('hidden')!.areaM2).toBeCloseTo(0.7 * 0.6 + 0.664 * 0.314, 1);
  for (const c of plan.classes)
    expect(c.litres).toBeCloseTo(((c.areaM2 * c.coats) / plan.coverageM2PerL) * 1.15, 6);
});

test('a narrow deep pigeonhole is finished before it is put together, its glue faces masked; after that no dust', () => {
  const { build } = built(plainCase('600 mm', 5));
  const kinds = build.operations.map((o) => o.kind);
  expect(build.finishing!.before.length).toBeGreaterThan(3);
  expect(kinds.indexOf('mask')).toBeLessThan(kinds.indexOf('prefinish'));
  expect(kinds.lastIndexOf('prefinish')).toBeLessThan(kinds.indexOf('assemble'));
  expect(built(plainCase('600 mm', 1)).build.finishing!.before).toEqual([]);
});

test('coats and coverage of the label count before those of the table', () => {
  const demo = demoDocument();
  const rack = demo.shop.rack as Record<string, unknown>;
  const lot = {
    id: 'v',
    material: 'water-polyurethane',
    label: { coats: 3, coverageM2PerL: 10, recoatHours: 2 },
  };
  const { build } = built({ ...demo, shop: { ...demo.shop, rack: { ...rack, finishes: [lot] } } });
  expect(build.finishing).toMatchObject({ coats: 3, coverageM2PerL: 10, coverageFrom: 'label' });
  const coats = build.operations.filter((o) => o.id.startsWith('finish/coat-'));
  expect(coats.map((o) => o.minutes.waiting)).toEqual([120, 120, 120]);
  expect(coats[0]!.lines.join(' ')).toContain('as the label of polyurethane, water-borne says');
});

test('what closes a space behind is finished before it is closed, and the back that closes it; a plain back is not', () => {
  const { build } = builtExample('radio-station');
  expect(build.finishing!.before).toEqual(['D3', 'F1']);
  const ids = build.operations.map((o) => o.id);
  expect(ids.indexOf('prefinish/coat-2')).toBeLessThan(ids.indexOf('F1/set'));
  expect(builtExample('record-bench').build.finishing!.before).toEqual([]);
});

test('a solid top that lies on a panel gets its coats underneath before it lies there; no glue face of it is masked', () => {
  const { build } = builtExample('sewing-stand');
  expect(build.finishing!.before).toEqual(['C2']);
  const ids = build.operations.map((o) => o.id);
  expect(ids).not.toContain('prefinish/mask');
  expect(ids.indexOf('prefinish/coat-2')).toBeLessThan(ids.indexOf('C2/set'));
  // Reached from below, it waits for the finish of the piece.
  expect(builtExample('lamp-table').build.finishing!.before).toEqual([]);
});
