import { dateOf, WEEKDAYS } from '../../measure/index.ts';
import type { Schedule } from './schedule.ts';
import { DAY } from './working-time.ts';

/** A moment of a schedule as it is written: the day counted from 1, its date and weekday where known, the time. */
export interface WrittenMoment {
  readonly day: number;
  readonly date: string | undefined;
  readonly weekday: string;
  readonly time: string;
}

/** Writes a moment down. Midnight is 24:00 of the day that ends when `ends` is true. */
export function writtenMoment(
  schedule: Pick<Schedule, 'firstDay' | 'firstWeekday'>,
  moment: number,
  ends = false,
): WrittenMoment {
  const day = ends ? Math.max(0, Math.ceil(moment / DAY) - 1) : Math.floor(moment / DAY);
  const past = Math.round(moment - day * DAY);
  const two = (n: number) => `${n}`.padStart(2, '0');
  return {
    day: day + 1,
    date: schedule.firstDay === undefined ? undefined : dateOf(schedule.firstDay + day),
    weekday: WEEKDAYS[(schedule.firstWeekday + day) % 7]!,
    time: `${two(Math.floor(past / 60))}:${two(past % 60)}`,
  };
}
