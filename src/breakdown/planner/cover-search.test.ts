import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { type CoverColumns, CoverListing } from './cover-columns.ts';
import { CoverRelaxation } from './cover-relaxation.ts';
import { CoverSearch } from './cover-search.ts';
import { CoverTurns } from './cover-turns.ts';
import { PatternMaster } from './pattern-master.ts';

const ROOM = 30;

/** A few pieces of a few kinds, the longest first. */
const pieces = fc
  .array(fc.record({ length: fc.integer({ min: 4, max: ROOM }), count: fc.integer({ min: 1, max: 2 }) }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((kinds) => {
    const of = new Map<number, number>();
    for (const { length, count } of kinds) of.set(length, (of.get(length) ?? 0) + count);
    const sorted = [...of].sort((a, b) => b[0] - a[0]);
    return {
      lengths: Int32Array.from(sorted, ([length]) => length),
      demand: Int32Array.from(sorted, ([, count]) => count),
    };
  });

/** Every filling of a bar, the empty one too, by trying all counts. */
function allFillings(lengths: Int32Array, demand: Int32Array): number[][] {
  let all: number[][] = [[]];
  for (let i = 0; i < lengths.length; i++)
    all = all.flatMap((f) => Array.from({ length: demand[i]! + 1 }, (_, c) => [...f, c]));
  return all.filter((f) => f.reduce((a, c, i) => a + c * lengths[i]!, 0) <= ROOM);
}

/** The fewest fillings that hold all pieces, by trying all. */
function fewestBars(lengths: Int32Array, demand: Int32Array): number {
  const known = new Map<string, number>();
  const fillings = allFillings(lengths, demand).filter((f) => f.some((c) => c > 0));
  const fewest = (left: readonly number[]): number => {
    if (left.every((d) => d === 0)) return 0;
    const key = left.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const first = left.findIndex((d) => d > 0);
    let best = Number.POSITIVE_INFINITY;
    for (const f of fillings)
      if (f[first]! > 0 && f.every((c, i) => c <= left[i]!))
        best = Math.min(best, 1 + fewest(left.map((d, i) => d - f[i]!)));
    known.set(key, best);
    return best;
  };
  return fewest([...demand]);
}

/** All fillings but the empty one. */
function everyColumn(lengths: Int32Array, demand: Int32Array): CoverColumns {
  const worth = new Float64Array(lengths.length).fill(1);
  const listing = new CoverListing({ lengths, demand, room: ROOM, worth }, Int32Array.from(lengths.keys()));
  return listing.within(0, 100_000)!;
}

function countsOf({ columns }: CoverColumns, kinds: number): number[][] {
  return Array.from({ length: columns.length }, (_, j) => {
    const counts = new Array<number>(kinds).fill(0);
    for (let k = columns.start[j]!; k < columns.start[j + 1]!; k++)
      counts[columns.kind[k]!] = columns.times[k]!;
    return counts;
  });
}

test('lists the fillings that fall short by so much, and no others', () => {
  fc.assert(
    fc.property(
      pieces,
      fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 5, maxLength: 5 }),
      fc.integer({ min: 0, max: 10 }),
      ({ lengths, demand }, worths, short) => {
        const worth = Float64Array.from(lengths, (_, i) => worths[i]! / 12);
        const listing = new CoverListing(
          { lengths, demand, room: ROOM, worth },
          Int32Array.from(lengths.keys()),
        );
        const mine = countsOf(listing.within(short / 12 + 1e-9, 100_000)!, lengths.length);
        const worthOf = (f: readonly number[]) => f.reduce((a, c, i) => a + c * worth[i]!, 0);
        const all = allFillings(lengths, demand).filter((f) => worthOf(f) >= 1 - short / 12 - 1e-9);
        expect(new Set(mine.map(String))).toEqual(new Set(all.map(String)));
        expect(mine).toHaveLength(all.length);
      },
    ),
  );
});

test('gives up a list that would be too long', () => {
  const [lengths, demand] = [Int32Array.of(10, 9, 8), Int32Array.of(2, 2, 2)];
  const worth = Float64Array.of(0.5, 0.5, 0.5);
  const listing = new CoverListing({ lengths, demand, room: ROOM, worth }, Int32Array.of(0, 1, 2));
  expect(listing.within(1, 5)).toBeUndefined();
  expect(listing.within(0, 5)?.columns.length ?? 0).toBeLessThanOrEqual(5);
});

test('its relaxation is worth what column generation says', () => {
  fc.assert(
    fc.property(pieces, ({ lengths, demand }) => {
      const found = everyColumn(lengths, demand);
      const { columns } = found;
      const relaxation = new CoverRelaxation(
        columns,
        lengths.length,
        new Float64Array(columns.length).fill(1),
      );
      expect(relaxation.solve(demand, new Uint8Array(columns.length).fill(1), 1000)).toBe(true);
      const master = new PatternMaster(lengths, demand, ROOM);
      while (!master.finished) master.solve(0, 60, true);
      expect(relaxation.objective).toBeCloseTo(master.objective, 6);
      expect(relaxation.solve(demand, new Uint8Array(columns.length).fill(1), master.objective - 0.01)).toBe(
        false,
      );
    }),
  );
});

test('finds a cover exactly where there is one', () => {
  fc.assert(
    fc.property(pieces, fc.integer({ min: 1, max: 99 }), ({ lengths, demand }, seed) => {
      const found = everyColumn(lengths, demand);
      const all = countsOf(found, lengths.length);
      const fewest = fewestBars(lengths, demand);
      for (const bars of [fewest - 1, fewest]) {
        const run = new CoverSearch(found, demand, bars, new Chance(seed), () => true).run();
        let step = run.next();
        while (!step.done) step = run.next();
        if (bars < fewest) expect(step.value).toBeUndefined();
        else {
          expect(step.value!.length).toBeLessThanOrEqual(bars);
          const held = [...demand.keys()].map((i) => step.value!.reduce((a, j) => a + all[j]![i]!, 0));
          expect(held).toEqual([...demand]);
        }
      }
    }),
  );
});

test('goes on to another cover when one will not do', () => {
  const [lengths, demand] = [Int32Array.of(15, 14, 13), Int32Array.of(2, 2, 2)];
  const found = everyColumn(lengths, demand);
  const seen: string[] = [];
  const search = new CoverSearch(found, demand, 3, new Chance(1), (picked) => {
    seen.push([...picked].sort((a, b) => a - b).join());
    return false;
  });
  for (const _ of search.run());
  // 15 + 15, 14 + 14, 13 + 13; 15 + 14, 15 + 13, 14 + 13; 15 + 15, 14 + 13 twice; and so on: five in all.
  expect(new Set(seen).size).toBe(5);
});

test('fills bars without any waste, as trying from the longest piece on does not', () => {
  // Twenty full bars of three, cut at random and mixed.
  const chance = new Chance(11);
  const of = new Map<number, number>();
  for (let bar = 0; bar < 20; bar++) {
    const first = 250 + chance.below(200);
    const second = 200 + chance.below(150);
    for (const l of [first, second, 1000 - first - second]) of.set(l, (of.get(l) ?? 0) + 1);
  }
  const sorted = [...of].sort((a, b) => b[0] - a[0]);
  const lengths = Int32Array.from(sorted, ([l]) => l);
  const demand = Int32Array.from(sorted, ([, c]) => c);
  const master = new PatternMaster(lengths, demand, 1000);
  const covers = new CoverTurns(master, 20, chance);
  let found: ReturnType<CoverTurns['turn']>;
  for (let turn = 0; turn < 400 && !found && !covers.done; turn++) found = covers.turn(1e6);
  expect(found?.total).toBe(20);
  for (const { counts } of found!.bars)
    expect(counts.reduce((a, c, i) => a + c * lengths[i]!, 0)).toBeLessThanOrEqual(1000);
});
