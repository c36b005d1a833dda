/** The days of the week, Monday first, as they are named on cards. */
export const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** A day of the Gregorian calendar as a whole number, 0 being 1 January 1970; undefined for a day that there isn’t. */
export function dayNumber(date: string): number | undefined {
  const read = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!read) return undefined;
  const day = numberOf(Number(read[1]), Number(read[2]), Number(read[3]));
  return dateOf(day) === date ? day : undefined;
}

/** `2026-03-02` for a day’s number. */
export function dateOf(day: number): string {
  let year = 1970 + Math.floor(day / 365.2425);
  while (numberOf(year, 1, 1) > day) year--;
  while (numberOf(year + 1, 1, 1) <= day) year++;
  let month = 12;
  while (numberOf(year, month, 1) > day) month--;
  const two = (n: number) => `${n}`.padStart(2, '0');
  return `${`${year}`.padStart(4, '0')}-${two(month)}-${two(day - numberOf(year, month, 1) + 1)}`;
}

/** 0 for Monday to 6 for Sunday; 1 January 1970 was a Thursday. */
export function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

const BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/** Days from 1 January 1970: ISO 8601, every fourth year a leap year but for three centuries of four. */
function numberOf(year: number, month: number, day: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const before = year - 1;
  const leaps = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  return 365 * before + leaps + BEFORE[month - 1]! + (leap && month > 2 ? 1 : 0) + day - 1 - 719162;
}
