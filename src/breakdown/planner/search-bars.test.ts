import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { FillBar } from './fill-bar.ts';
import { FillFour } from './fill-four.ts';
import { PatternMaster } from './pattern-master.ts';
import { RefillBars } from './refill-bars.ts';
import { searchBars } from './search-bars.ts';
import { SwapBars } from './swap-bars.ts';

/** The fewest bars for a handful of pieces, by trying every set of pieces as one bar. */
function fewestBars(pieces: readonly number[], room: number): number {
  const all = (1 << pieces.length) - 1;
  const best = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  best[0] = 0;
  for (let set = 1; set <= all; set++)
    for (let part = set; part > 0; part = (part - 1) & set) {
      let length = 0;
      pieces.forEach((l, i) => {
        if (part & (1 << i)) length += l;
      });
      if (length <= room) best[set] = Math.min(best[set]!, best[set ^ part]! + 1);
    }
  return best[all]!;
}

function last<T>(steps: Iterable<T>): T {
  let end: T | undefined;
  for (const s of steps) end = s;
  return end!;
}

const rows = fc.uniqueArray(fc.tuple(fc.integer({ min: 4, max: 30 }), fc.integer({ min: 1, max: 3 })), {
  minLength: 1,
  maxLength: 4,
  selector: ([l]) => l,
});

describe('searchBars', () => {
  it('finds the fewest bars, against trying everything, with a bound that is not above them', () => {
    fc.assert(
      fc.property(rows, (kinds) => {
        const sorted = [...kinds].sort((a, b) => b[0] - a[0]);
        const pieces = sorted.flatMap(([l, n]) => new Array<number>(n).fill(l));
        fc.pre(pieces.length <= 9);
        const lengths = Int32Array.from(sorted, ([l]) => l);
        const demand = Int32Array.from(sorted, ([, n]) => n);
        const area = Math.ceil(pieces.reduce((a, b) => a + b, 0) / 31);
        const end = last(searchBars(lengths, demand, 31, area, 2e6, 1));
        expect(end.best.total).toBe(fewestBars(pieces, 31));
        expect(end.bound).toBeLessThanOrEqual(end.best.total);
      }),
      { seed: 5, numRuns: 150 },
    );
  });

  it('fills a long bar by branching like a short one by table', () => {
    fc.assert(
      fc.property(
        rows,
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 4, maxLength: 4 }),
        (kinds, worths) => {
          const lengths = Int32Array.from(kinds, ([l]) => l);
          const most = Int32Array.from(kinds, ([, n]) => n);
          const worth = Float64Array.from(kinds, (_, i) => worths[i]!);
          const table = new FillBar(lengths, 50);
          const scaled = new FillBar(
            lengths.map((l) => l * 1000),
            50_000,
          );
          expect(table.solve(worth, most) && scaled.solve(worth, most)).toBe(true);
          expect(table.value).toBe(scaled.value);
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  it('fills a bar of at most four by pairs like by table', () => {
    const lengthsOfFour = fc.uniqueArray(fc.integer({ min: 21, max: 60 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(
        lengthsOfFour,
        fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 4 })), {
          minLength: 9,
          maxLength: 9,
        }),
        (all, rows) => {
          const lengths = Int32Array.from(all);
          const worth = Float64Array.from(all, (_, i) => rows[i]![0]);
          const most = Int32Array.from(all, (_, i) => rows[i]![1]);
          const table = new FillBar(lengths, 100);
          const pairs = new FillFour(lengths, 100);
          expect(table.solve(worth, most) && pairs.solve(worth, most)).toBe(true);
          expect(pairs.value).toBeCloseTo(table.value, 9);
          let length = 0;
          pairs.count.forEach((c, i) => {
            expect(c).toBeLessThanOrEqual(most[i]!);
            length += c * lengths[i]!;
          });
          expect(length).toBeLessThanOrEqual(100);
        },
      ),
      { seed: 5, numRuns: 500 },
    );
  });

  it('swaps pieces until each has a place once and no bar is too full, mostly even without any waste', () => {
    let runs = 0;
    let all = 0;
    const cuts = fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(fc.array(cuts, { minLength: 1, maxLength: 8 }), (bars) => {
        // Bars cut up without waste, so that as many bars are known to do.
        const pieces = bars.flatMap((at) => {
          const ends = [0, ...new Set(at), 100].sort((a, b) => a - b);
          return ends.slice(1).map((e, i) => e - ends[i]!);
        });
        const lengths = Int32Array.from(pieces.sort((a, b) => b - a));
        const search = new SwapBars(lengths, 100, bars.length, new Chance(3));
        let done = false;
        for (let turn = 0; !done && turn < 3000; turn++) done = search.improve();
        runs++;
        if (!done) return;
        all++;
        const found = search.found();
        expect(found.length).toBeLessThanOrEqual(bars.length);
        expect(found.flat().sort((a, b) => a - b)).toEqual([...lengths.keys()]);
        for (const bar of found)
          expect(bar.reduce((sum, i) => sum + lengths[i]!, 0)).toBeLessThanOrEqual(100);
      }),
      { seed: 5, numRuns: 60 },
    );
    expect(all / runs).toBeGreaterThan(0.9);
  });

  // Drawn like the triplets of E. Falkenauer, J. of Heuristics 2, 1996: every bar of 1000 is cut in three without waste.
  const triplets = (bars: number, seed: number) => {
    const chance = new Chance(seed);
    const between = (a: number, b: number) => a + chance.below(b - a + 1);
    return Array.from({ length: bars }, () => {
      const a = between(380, 490);
      const b = between(250, Math.floor((1000 - a) / 2));
      return [a, b, 1000 - a - b];
    })
      .flat()
      .sort((a, b) => b - a);
  };

  it.each([1, 2, 3])(
    'refills bars that were cut in three without waste until every piece has a place',
    (seed) => {
      const pieces = triplets(167, seed);
      const search = new RefillBars(Int32Array.from(pieces), 1000, 167, pieces.keys(), new Chance(seed));
      let turns = 0;
      while (!search.improve()) expect(++turns).toBeLessThan(60_000);
      expect(search.bars.flat().sort((a, b) => a - b)).toEqual([...pieces.keys()]);
      for (const bar of search.bars) expect(bar.reduce((sum, i) => sum + pieces[i]!, 0)).toBe(1000);
    },
  );

  it.each([4, 5])('finds the bars of many pieces that leave no waste at all', (seed) => {
    const kinds = new Map<number, number>();
    for (const l of triplets(83, seed)) kinds.set(l, (kinds.get(l) ?? 0) + 1);
    const end = last(
      searchBars(Int32Array.from(kinds.keys()), Int32Array.from(kinds.values()), 1000, 83, 1.5e9, 1),
    );
    expect(end.best.total).toBe(83);
  });

  // Worked by hand: two pieces of 51 never share a bar of 100, so ten of them need ten bars, though their length is 5.1 bars.
  it('solves the relaxation of pieces longer than half a bar', () => {
    const m = new PatternMaster(Int32Array.of(51), Int32Array.of(10), 100);
    expect(m.solve(0, 100)).toBeCloseTo(10, 6);
    expect(m.objective).toBeCloseTo(10, 6);
  });
});
