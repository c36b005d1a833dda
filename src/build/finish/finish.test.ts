import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { built, demoDocument, pieceOf } from '../../../test/build/built.ts';
import { openSolids } from '../../adaptors/solids-manifold.ts';
import { shapeOf } from '../../setting-out/index.ts';
import type { Mesh, Solids } from '../../solid/index.ts';
import { Bench } from '../bench.ts';
import { coveredArea, type Rectangle } from './covered-area.ts';
import { exposedFaces } from './exposed-faces.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const plainCase = (height: string, shelves: number) =>
  pieceOf(
    { id: 'piece', kind: 'piece', name: 'Box', width: '700 mm', height, depth: '320 mm' },
    { id: 'case', kind: 'case', parent: 'piece', board: 'birch18', joints: 'pocket-screws' },
    { id: 'inside', kind: 'opening', parent: 'case' },
    { id: 'rows', kind: 'shelf', parent: 'inside', count: shelves },
    { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'applied' },
  );

function areaOf({ positions, triangles }: Mesh): number {
  let area = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const corner = (k: number): readonly number[] => {
      const at = triangles[i + k]! * 3;
      return [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    };
    const [a, b, c] = [corner(0), corner(1), corner(2)];
    const u = [0, 1, 2].map((k) => b[k]! - a[k]!) as [number, number, number];
    const v = [0, 1, 2].map((k) => c[k]! - a[k]!) as [number, number, number];
    area += Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
  }
  return area;
}

test('exposed faces together have the surface of the solid that all parts make, bare of pockets and holes', () => {
  for (const [height, shelves] of [
    ['600 mm', 2],
    ['1400 mm', 5],
  ] as const) {
    const { job, drawn } = built(plainCase(height, shelves));
    const bench = new Bench(job, drawn);
    const mine = exposedFaces(bench).reduce((sum, f) => sum + f.areaMm2, 0);
    const truly = solids.within(() => {
      const bodies = drawn.parts.map((p) =>
        solids.make(shapeOf(drawn, { ...p, features: [] }, { fastenerHoles: false })),
      );
      return areaOf(
        bodies
          .slice(1)
          .reduce((all, b) => all.union(b), bodies[0]!)
          .mesh(),
      );
    });
    expect(Math.abs(mine - truly) / truly).toBeLessThan(1e-6);
  }
});

test('rectangles cover what a grid of unit squares counts', () => {
  const side = fc.integer({ min: 0, max: 9 });
  const rectangle = fc
    .tuple(side, side, side, side)
    .map(([a, b, c, d]): Rectangle => [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)]);
  fc.assert(
    fc.property(fc.array(rectangle, { maxLength: 6 }), (all) => {
      let squares = 0;
      for (let x = 0; x < 9; x++)
        for (let y = 0; y < 9; y++)
          if (all.some((r) => r[0] <= x && x + 1 <= r[2] && r[1] <= y && y + 1 <= r[3])) squares++;
      expect(coveredArea(all)).toBe(squares);
    }),
  );
});

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
