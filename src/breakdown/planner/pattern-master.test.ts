import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PatternMaster } from './pattern-master.ts';

const problems = fc
  .record({
    room: fc.integer({ min: 100, max: 1000 }),
    pieces: fc.array(
      fc.record({
        share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        count: fc.integer({ min: 1, max: 6 }),
      }),
      {
        minLength: 2,
        maxLength: 20,
      },
    ),
  })
  .map(({ room, pieces }) => {
    const counts = new Map<number, number>();
    for (const { share, count } of pieces) {
      const length = Math.max(1, Math.round(share * room));
      counts.set(length, (counts.get(length) ?? 0) + count);
    }
    const kinds = [...counts].sort((a, b) => b[0] - a[0]);
    return {
      room,
      lengths: Int32Array.from(kinds, (k) => k[0]),
      demand: Int32Array.from(kinds, (k) => k[1]),
    };
  });

test('in the solved relaxation no piece is worth less than a shorter one, no filling more than a bar, and all are worth its value', () => {
  fc.assert(
    fc.property(problems, ({ room, lengths, demand }) => {
      const master = new PatternMaster(lengths, demand, room);
      while (!master.finished) master.solve(0, 60, true);
      const { worth } = master;
      for (let i = 0; i < lengths.length; i++)
        expect(worth[i]! - (worth[i + 1] ?? 0), `kind ${i}`).toBeGreaterThan(-1e-6);
      expect(heaviest(lengths, demand, worth, room)).toBeLessThan(1 + 1e-6);
      expect(worth.reduce((a, w, i) => a + w * demand[i]!, 0)).toBeCloseTo(master.objective, 6);
    }),
  );
});

/** What the filling of one bar is worth at most, by a plain table over all lengths. */
function heaviest(lengths: Int32Array, demand: Int32Array, worth: Float64Array, room: number): number {
  const best = new Float64Array(room + 1);
  lengths.forEach((length, i) => {
    for (let c = 0; c < demand[i]!; c++)
      for (let r = room; r >= length; r--) best[r] = Math.max(best[r]!, best[r - length]! + worth[i]!);
  });
  return best[room]!;
}
