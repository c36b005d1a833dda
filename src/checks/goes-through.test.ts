import fc from 'fast-check';
import { expect, test } from 'vitest';
import { goesThrough } from './goes-through.ts';

test('straight, and a quarter turned', () => {
  expect(goesThrough([600, 400], [700, 2000])).toBe(true);
  expect(goesThrough([2000, 700], [700, 2000])).toBe(true);
  expect(goesThrough([800, 701], [700, 2000])).toBe(false);
});

test('turned askew: a long thin one goes through the diagonal', () => {
  // A square of 1000 has a diagonal of 1414: a board of 20 goes in with at most 1394 (1414 less its thickness).
  expect(goesThrough([1394, 20], [1000, 1000])).toBe(true);
  expect(goesThrough([1395, 20], [1000, 1000])).toBe(false);
});

test('agrees with turning it by hundredths of a degree', () => {
  const side = fc.integer({ min: 1, max: 300 });
  fc.assert(
    fc.property(fc.tuple(side, side), fc.tuple(side, side), ([p, q], [a, b]) => {
      const fits = (slack: number) => {
        for (let i = 0; i <= 9000; i++) {
          const t = (i * Math.PI) / 18000;
          const [wide, high] = [p * Math.cos(t) + q * Math.sin(t), p * Math.sin(t) + q * Math.cos(t)];
          if (wide <= a + slack && high <= b + slack) return true;
        }
        return false;
      };
      // Steps of a hundredth of a degree may miss the one angle at which it just goes through.
      if (fits(1e-9)) expect(goesThrough([p, q], [a, b])).toBe(true);
      if (!fits(0.1)) expect(goesThrough([p, q], [a, b])).toBe(false);
    }),
    { numRuns: 200, seed: 3 },
  );
});
