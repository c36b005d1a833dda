import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DAY, weekly } from './working-time.ts';

/** Monday and Tuesday, eight to noon and one to five. */
const TWO_DAYS = [0, 1].flatMap((d) => [
  { from: d * DAY + 480, to: d * DAY + 720 },
  { from: d * DAY + 780, to: d * DAY + 1020 },
]);

test('work waits for the shop to open, pauses at noon and goes on after', () => {
  const week = weekly(TWO_DAYS, 0);
  expect(week.fit(0, 30, false)).toEqual([480, 510]);
  expect(week.fit(700, 40, false)).toEqual([700, 800]);
  expect(week.fit(700, 40, true)).toEqual([780, 820]);
  expect(week.fit(1000, 30, true)).toEqual([DAY + 480, DAY + 510]);
});

test('after the last session comes the next week', () => {
  const week = weekly(TWO_DAYS, 1);
  // The first day is a Tuesday: six days on it is Monday.
  expect(week.fit(1020, 10, false)).toEqual([6 * DAY + 480, 6 * DAY + 490]);
});

test('what is longer than any session is spread, though it should not be broken', () => {
  expect(weekly(TWO_DAYS, 0).fit(0, 300, true)).toEqual([480, 840]);
});

test('from behind the same: a span that ends by a moment', () => {
  const week = weekly(TWO_DAYS, 0);
  expect(week.fitBefore(800, 40, false)).toEqual([700, 800]);
  expect(week.fitBefore(800, 40, true)).toEqual([680, 720]);
  expect(week.fitBefore(480, 10, false)).toEqual([-6 * DAY + 1010, -6 * DAY + 1020]);
});

test('forward and backward are mirror images: the last span before an end begins no sooner than the first', () => {
  fc.assert(
    fc.property(
      fc.nat(20000),
      fc.integer({ min: 1, max: 700 }),
      fc.boolean(),
      fc.nat(6),
      (from, minutes, unbroken, day) => {
        const week = weekly(TWO_DAYS, day);
        const [start, end] = week.fit(from, minutes, unbroken);
        const [later, by] = week.fitBefore(end, minutes, unbroken);
        expect(by).toBe(end);
        expect(later).toBeGreaterThanOrEqual(start);
        expect(week.fit(later, minutes, unbroken)[1]).toBe(end);
      },
    ),
  );
});
