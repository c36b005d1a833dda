import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { tally } from './kept-sheet.ts';
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
        expect(found?.reduce((a, s) => a + s.count, 0)).toBe(sheets);
        const held = new Float64Array(kinds.length);
        for (const { tree, count } of found!) {
          const one = new Float64Array(kinds.length);
          tally(tree, one);
          one.forEach((c, i) => {
            held[i]! += c * count;
          });
          expect(tree.length <= 120 && tree.width <= 80).toBe(true);
        }
        expect([...held]).toEqual(kinds.map((k) => k.count));
        return;
      }
      throw new Error('the dive gave up');
    }),
    { numRuns: 60 },
  );
});

test('sizes that have no measure in common are refused quickly, or looked at few by few', () => {
  // Lengths to the 3200th of a millimetre, as a job's are: their sums are far too many.
  const kinds = Array.from({ length: 20 }, (_, piece) => ({
    piece,
    length: 682_781 + 100_067 * piece,
    width: 310_763 + 55_589 * piece,
    count: 6,
    turn: true,
  }));
  const stocks = [{ stock: 0, length: 7_802_880, width: 3_901_440, count: 1000, cost: 1 }];
  expect(
    SheetDive.of({ flat: false, kinds, stocks } as unknown as ScaledProblem, new Chance(1)),
  ).toBeUndefined();
  const three = kinds.slice(0, 3).map((k) => ({ ...k, turn: false }));
  const few = { flat: false, kinds: three, stocks } as unknown as ScaledProblem;
  const dive = SheetDive.of(few, new Chance(1))!;
  let [work, most] = [0, 0];
  for (const _ of dive.run(1, () => 9)) {
    most = Math.max(most, dive.work - work);
    work = dive.work;
    if (work > 5_000_000) break;
  }
  expect(work).toBeGreaterThan(0);
  expect(most).toBeLessThan(1_500_000);
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
