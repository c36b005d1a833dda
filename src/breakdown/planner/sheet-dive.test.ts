import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { type KeptSheet, tally } from './kept-sheet.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import { SheetDive } from './sheet-dive.ts';

/** Pieces that sheets cut to the end come to: every sheet is cut like one of a few, and nothing of it is left. */
const cutUp = fc
  .record({
    seed: fc.integer({ min: 1, max: 1_000_000 }),
    sheets: fc.integer({ min: 6, max: 20 }),
    ways: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ seed, sheets, ways }) => {
    const chance = new Chance(seed);
    const patterns = Array.from({ length: ways }, () => split(chance, [[120, 80]], 6));
    const counts = new Map<string, number>();
    for (let s = 0; s < sheets; s++)
      for (const piece of patterns[s % ways]!)
        counts.set(piece.join('x'), (counts.get(piece.join('x')) ?? 0) + 1);
    const kinds = [...counts].map(([key, count], piece) => {
      const [length, width] = key.split('x').map(Number) as [number, number];
      return { piece, length, width, count, turn: false };
    });
    return { sheets, kinds };
  });

test('pieces that sheets were cut into without waste go back into as many sheets, each held once', () => {
  fc.assert(
    fc.property(cutUp, ({ sheets, kinds }) => {
      const p = {
        flat: false,
        kinds,
        stocks: [{ stock: 0, length: 120, width: 80, count: 1000, cost: 1 }],
      } as unknown as ScaledProblem;
      const pieces = kinds.reduce((a, k) => a + k.count, 0);
      if (pieces < 3 * kinds.length) return;
      const dive = SheetDive.of(p, new Chance(1))!;
      for (const found of dive.run(sheets, () => sheets + 1)) {
        if (!found && dive.work < 20_000_000) continue;
        expect(found?.length).toBe(sheets);
        expect(held(kinds.length, found!)).toEqual(kinds.map((k) => k.count));
        return;
      }
      throw new Error('the dive gave up');
    }),
    { numRuns: 60 },
  );
});

test('a kind of which none is left is no hindrance', () => {
  const p = {
    flat: false,
    kinds: [
      { piece: 0, length: 40, width: 30, count: 0, turn: true },
      { piece: 1, length: 60, width: 40, count: 12, turn: true },
    ],
    stocks: [{ stock: 0, length: 120, width: 80, count: 1000, cost: 1 }],
  } as unknown as ScaledProblem;
  for (const found of SheetDive.of(p, new Chance(1))!.run(3, () => 4)) {
    if (!found) continue;
    expect(found.length).toBe(3);
    expect(held(2, found)).toEqual([0, 12]);
    return;
  }
  throw new Error('the dive gave up');
});

test('any pieces are held once each, however often their patterns would hold them', () => {
  const kind = fc.record({
    length: fc.integer({ min: 10, max: 100 }),
    width: fc.integer({ min: 10, max: 70 }),
    count: fc.integer({ min: 3, max: 9 }),
    turn: fc.boolean(),
  });
  let sheets = 0;
  fc.assert(
    fc.property(fc.array(kind, { minLength: 2, maxLength: 5 }), (wanted) => {
      const kinds = wanted.map((k, piece) => ({ ...k, piece }));
      const stocks = [{ stock: 0, length: 120, width: 80, count: 1000, cost: 1 }];
      const dive = SheetDive.of({ flat: false, kinds, stocks } as unknown as ScaledProblem, new Chance(1));
      for (const found of dive?.run(1, () => 1000) ?? []) {
        if (found) {
          sheets += found.length;
          expect(held(kinds.length, found)).toEqual(kinds.map((k) => k.count));
        }
        if (found || dive!.work > 2_000_000) return;
      }
    }),
    { numRuns: 60 },
  );
  expect(sheets).toBeGreaterThan(100);
});

/** How many of each kind sheets hold, all of them within 120 by 80. */
function held(kinds: number, sheets: readonly KeptSheet[]): number[] {
  const counts = new Float64Array(kinds);
  for (const { tree, count } of sheets) {
    expect(count).toBe(1);
    expect(tree.length <= 120 && tree.width <= 80).toBe(true);
    tally(tree, counts);
  }
  return [...counts];
}

const kindsOf = (
  n: number,
  count: number,
  length: readonly [number, number],
  width: readonly [number, number],
  turn: boolean,
) =>
  Array.from({ length: n }, (_, piece) => ({
    piece,
    length: length[0] + length[1] * piece,
    width: width[0] + width[1] * piece,
    count,
    turn,
  }));

test('sizes that have no measure in common are refused, their sums are too many', () => {
  // Lengths to the 3200th of a millimetre, as a job's are.
  const kinds = kindsOf(20, 6, [682_781, 100_067], [310_763, 55_589], true);
  const stocks = [{ stock: 0, length: 7_802_880, width: 3_901_440, count: 1000, cost: 1 }];
  expect(
    SheetDive.of({ flat: false, kinds, stocks } as unknown as ScaledProblem, new Chance(1)),
  ).toBeUndefined();
});

test('it pauses after little work, however long a filling takes', () => {
  const kinds = kindsOf(10, 6, [213, 31], [97, 17], false);
  const stocks = [{ stock: 0, length: 2440, width: 1220, count: 1000, cost: 1 }];
  const dive = SheetDive.of({ flat: false, kinds, stocks } as unknown as ScaledProblem, new Chance(1))!;
  let [work, most] = [0, 0];
  for (const _ of dive.run(1, () => 99)) {
    most = Math.max(most, dive.work - work);
    work = dive.work;
    if (work > 5_000_000) break;
  }
  // A second's work is 60 million.
  expect(most).toBeLessThan(600_000);
  expect(work).toBeGreaterThan(5_000_000);
});

function split(chance: Chance, from: [number, number][], pieces: number): [number, number][] {
  const parts = [...from];
  for (let tries = 0; parts.length < pieces && tries < 200; tries++) {
    const at = chance.below(parts.length);
    const [l, w] = parts[at]!;
    const along = chance.below(l + w) < l;
    const size = along ? l : w;
    if (size < 20) continue;
    const cut = 10 + chance.below(size - 19);
    parts.splice(
      at,
      1,
      ...((along
        ? [
            [cut, w],
            [l - cut, w],
          ]
        : [
            [l, cut],
            [l, size - cut],
          ]) as [number, number][]),
    );
  }
  return parts;
}
