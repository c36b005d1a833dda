import { expect, test } from 'vitest';
import { dateOf, dayNumber, WEEKDAYS, weekdayOf } from './civil-day.ts';

// Days known from the calendar: the epoch of Unix time; the first of 2000, a leap year; a century that is none.
test.each([
  ['1970-01-01', 0, 'Thu'],
  ['2000-01-01', 10957, 'Sat'],
  ['2000-02-29', 11016, 'Tue'],
  ['2100-03-01', 47541, 'Mon'],
  ['2026-11-25', 20782, 'Wed'],
])('%s', (date, number, weekday) => {
  expect(dayNumber(date)).toBe(number);
  expect(dateOf(number)).toBe(date);
  expect(WEEKDAYS[weekdayOf(number)]).toBe(weekday);
});

test('a day that there isn’t is none', () => {
  for (const date of ['2100-02-29', '2026-13-01', '2026-04-31', '2026-4-1', 'tomorrow'])
    expect(dayNumber(date)).toBeUndefined();
});

test('dates of a hundred thousand days lead back to their numbers, each a weekday on', () => {
  for (let day = -20000; day < 80000; day += 7) {
    expect(dayNumber(dateOf(day))).toBe(day);
    expect(weekdayOf(day)).toBe(weekdayOf(-20000));
  }
});
