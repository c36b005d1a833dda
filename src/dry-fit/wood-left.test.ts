import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Point, Shape, Solids } from '../solid/index.ts';
import { woodLeft } from './wood-left.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const BOARD = { min: [0, 0, 0] as Point, max: [100, 60, 20] as Point };
const left = (cuts: readonly Shape[]) =>
  solids.within(() => solids.make({ kind: 'without', body: { kind: 'box', ...BOARD }, cuts }).volume());

const side = fc.tuple(fc.integer({ min: -10, max: 110 }), fc.integer({ min: 1, max: 70 }));
const boxCut = fc.tuple(side, side, side).map(
  ([x, y, z]): Shape => ({
    kind: 'box',
    min: [x[0], y[0] / 2, z[0] / 4],
    max: [x[0] + x[1], y[0] / 2 + y[1], z[0] / 4 + z[1] / 4],
  }),
);
/** Turned by quarters about the origin, as boards stand. */
const turned = boxCut.map(
  (body): Shape => ({
    kind: 'moved',
    body,
    frame: { origin: [60, 0, 3], x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] },
  }),
);
const hole = fc
  .tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 60 }), fc.integer({ min: 2, max: 9 }))
  .map(([x, y, radius]): Shape => ({ kind: 'cylinder', from: [x, y, -1], to: [x, y, 21], radius }));

describe('the wood that cuts leave of a box', () => {
  test('is as much as the solid modeller finds, where all cuts are boxes', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(boxCut, turned), { maxLength: 6 }), (cuts) => {
        const { least, most } = woodLeft(BOARD, cuts);
        expect(least).toBe(most);
        expect(most).toBeCloseTo(left(cuts), 3);
      }),
      { numRuns: 60 },
    );
  });

  test('lies between what it says, where some are round', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(boxCut, hole), { maxLength: 6 }), (cuts) => {
        const { least, most } = woodLeft(BOARD, cuts);
        const real = left(cuts);
        expect(least).toBeLessThanOrEqual(real + 1e-3);
        expect(most).toBeGreaterThanOrEqual(real - 1e-3);
      }),
      { numRuns: 60 },
    );
  });

  test('of a slope is known by the box that it lies in', () => {
    const slope: Shape = {
      kind: 'hull',
      points: [
        [90, -1, 21],
        [101, -1, 21],
        [101, -1, 10],
        [90, 61, 21],
        [101, 61, 21],
        [101, 61, 10],
      ],
    };
    expect(woodLeft(BOARD, [slope])).toEqual({ least: 100 * 60 * 20 - 10 * 60 * 10, most: 100 * 60 * 20 });
  });
});
