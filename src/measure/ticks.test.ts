import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromInches, fromMm, LONGEST, roundHalfAway, ticks, toInches, toMm, toStep } from './ticks.ts';

test('both systems are exact: 0.01 mm is 32 ticks, 1/128 in is 635, an inch is 25.4 mm', () => {
  expect(fromMm(0.01)).toBe(32);
  expect(fromInches(1 / 128)).toBe(635);
  expect(fromInches(1)).toBe(fromMm(25.4));
  expect(toInches(fromMm(304.8))).toBe(12);
});

test('no fractions, no NaN, nothing past 32 bits, no minus zero', () => {
  for (const n of [0.5, Number.NaN, Number.POSITIVE_INFINITY, LONGEST + 1, -LONGEST - 1])
    expect(() => ticks(n)).toThrow('not a whole tick');
  expect(Object.is(ticks(-0), 0)).toBe(true);
  expect(Object.is(fromMm(-0.0001), 0)).toBe(true);
});

test('halves go away from zero, alike on both sides', () => {
  expect([0.5, 1.5, 2.5, -0.5, -1.5, 0.4, -0.4].map(roundHalfAway)).toEqual([1, 2, 3, -1, -2, 0, 0]);
});

test('a step is met from below, from above or from the nearer side', () => {
  const step = fc.integer({ min: 1, max: 500_000 });
  fc.assert(
    fc.property(fc.integer({ min: -2_000_000, max: 2_000_000 }), step, (t, s) => {
      const [down, up, near] = [toStep(t, s, 'down'), toStep(t, s, 'up'), toStep(t, s, 'nearest')];
      for (const n of [down, up, near]) expect(Math.abs(n % s)).toBe(0);
      expect(down).toBeLessThanOrEqual(t);
      expect(up).toBeGreaterThanOrEqual(t);
      expect(up - down).toBe(t % s === 0 ? 0 : s);
      expect(Math.abs(near - t) * 2).toBeLessThanOrEqual(s);
    }),
  );
  expect(() => toStep(1, 0, 'up')).toThrow('must be positive');
});

test('millimetres and back lose nothing', () => {
  fc.assert(
    fc.property(fc.integer({ min: -LONGEST, max: LONGEST }), (n) => {
      expect(fromMm(toMm(n))).toBe(n);
      expect(fromInches(toInches(n))).toBe(n);
    }),
  );
});
