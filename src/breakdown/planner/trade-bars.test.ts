import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { FillExactly } from './fill-exactly.ts';
import { FitLast } from './fit-last.ts';
import { TradeBars } from './trade-bars.ts';

/** Bars of 1000 cut into pieces by chance, in falling order of length, with how many of each there are. */
function cutUp(bars: number, seed: number): { lengths: Int32Array; demand: Int32Array } {
  const chance = new Chance(seed);
  const kinds = new Map<number, number>();
  for (let b = 0; b < bars; b++)
    for (let left = 1000; left > 0; ) {
      const l = left < 80 ? left : Math.min(left, 1 + chance.below(700));
      kinds.set(l, (kinds.get(l) ?? 0) + 1);
      left -= l;
    }
  const rows = [...kinds].sort(([a], [b]) => b - a);
  return { lengths: Int32Array.from(rows, ([l]) => l), demand: Int32Array.from(rows, ([, n]) => n) };
}

function expectAllPlaced(
  bars: readonly (readonly number[])[],
  lengths: Int32Array,
  demand: Int32Array,
  room: number,
): void {
  const placed = new Int32Array(lengths.length);
  for (const bar of bars) {
    for (const k of bar) placed[k]!++;
    expect(bar.reduce((a, k) => a + lengths[k]!, 0)).toBeLessThanOrEqual(room);
  }
  expect([...placed]).toEqual([...demand]);
}

describe('TradeBars', () => {
  it.each([1, 2, 3, 4, 5])(
    'brings the pieces of 60 bars without waste back into 60 bars, draw %i',
    (seed) => {
      const { lengths, demand } = cutUp(60, seed);
      const search = new TradeBars(lengths, demand, 1000, 60, new Chance(seed));
      let turns = 0;
      while (!search.improve()) expect(++turns).toBeLessThan(4000);
      expect(search.found()).toHaveLength(60);
      expectAllPlaced(search.found(), lengths, demand, 1000);
    },
  );

  it('never says that pieces fit into bars that are too few', () => {
    const search = new TradeBars(Int32Array.of(51), Int32Array.of(12), 100, 7, new Chance(1));
    for (let turn = 0; turn < 50; turn++) expect(search.improve()).toBe(false);
  });
});

describe('FitLast', () => {
  it('fits the pieces of a few bars without waste, and says no where there is one piece too many', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { lengths, demand } = cutUp(5, seed);
      const last = new FitLast(lengths, 1000, new Chance(seed));
      const fitted = last.fit(demand, 5, 20_000);
      expect(fitted?.length).toBeLessThanOrEqual(5);
      expectAllPlaced(fitted!, lengths, demand, 1000);
      expect(last.fit(demand, 4, 20_000)).toBeUndefined();
    }
  });

  // Worked by hand: by length 300 go into 3 bars of 100, but two pieces of 51 never share a bar.
  it('says no where the lengths add up but the pieces do not go together', () => {
    const last = new FitLast(Int32Array.of(51, 24), 100, new Chance(1));
    expect(last.fit(Int32Array.of(4, 4), 3, 1000)).toBeUndefined();
    expect(last.fit(Int32Array.of(4, 4), 4, 1000)).toHaveLength(4);
  });
});

describe('FillExactly', () => {
  it('lists every filling that wastes no more and leaves no room for a further piece, against trying all', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 5 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 5, maxLength: 5 }),
        fc.integer({ min: 3, max: 60 }),
        fc.integer({ min: 0, max: 9 }),
        (all, counts, free, spare) => {
          const lengths = Int32Array.from(all).sort().reverse();
          const left = Int32Array.from(lengths, (_, i) => counts[i]!);
          const listed = new FillExactly(lengths, 60, left)
            .list(free, spare, 10_000, 10)
            .map((f) => lengths.map((_, i) => f.kinds.filter((k) => k === i).length).join());
          const tried: string[] = [];
          const now = new Int32Array(lengths.length);
          const go = (i: number, open: number): void => {
            if (i === lengths.length) {
              const more = lengths.some((l, k) => l <= open && now[k]! < left[k]!);
              if (open <= spare && !more) tried.push(now.join());
              return;
            }
            for (now[i] = 0; now[i]! <= left[i]! && now[i]! * lengths[i]! <= open; now[i]!++)
              go(i + 1, open - now[i]! * lengths[i]!);
            now[i] = 0;
          };
          go(0, free);
          expect(listed.sort()).toEqual(tried.sort());
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });
});
