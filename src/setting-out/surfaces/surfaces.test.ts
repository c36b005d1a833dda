import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { built, builtExample, pieceOf } from '../../../test/build/built.ts';
import { openSolids } from '../../adaptors/solids-manifold.ts';
import type { Mesh, Solids } from '../../solid/index.ts';
import { shapeOf } from '../solids-of-parts.ts';
import { coveredArea, type Rectangle } from './covered-area.ts';
import { exposedFaces } from './exposed-faces.ts';
import { goodFaces } from './good-faces.ts';

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
    const { drawn } = built(plainCase(height, shelves));
    const mine = exposedFaces(drawn).reduce((sum, f) => sum + f.areaMm2, 0);
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

test('a back and a bottom show their better face alone; sides, shelves and what is over them both', () => {
  const { drawn } = built(plainCase('600 mm', 2));
  const of = goodFaces(drawn);
  expect(Object.fromEntries(drawn.parts.map((p) => [p.name, of(p)]))).toEqual({
    'left side': 2,
    'right side': 2,
    'top panel': 2,
    bottom: 1,
    'shelf 1': 2,
    'shelf 2': 2,
    back: 1,
  });
});

test('strips of a base behind others show none, sliding doors both', () => {
  const { drawn } = builtExample('glaze-cabinet');
  const of = goodFaces(drawn);
  const needs = (name: RegExp) => drawn.parts.filter((p) => name.test(p.name)).map(of);
  expect(needs(/^back$/)).toEqual([1]);
  expect(needs(/^back strip/)).toEqual([0]);
  expect(needs(/sliding door/)).toEqual([2, 2]);
});
