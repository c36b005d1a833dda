import { DAYS, type JobDocument, type WorkingHours } from '../../job/index.ts';
import { dayNumber, weekdayOf } from '../../measure/index.ts';
import { DAY, type Session, type WorkingTime, weekly } from './working-time.ts';

/** Monday to Friday with an hour at noon: common practice, where the shop doesn’t say. */
const USUAL: readonly WorkingHours[] = [
  { days: ['mon', 'tue', 'wed', 'thu', 'fri'], from: '08:00', to: '12:00' },
  { days: ['mon', 'tue', 'wed', 'thu', 'fri'], from: '13:00', to: '17:00' },
];

/** The hours a shop works, and the day its schedule counts from. */
export interface ShopHours {
  readonly workingTime: WorkingTime;
  /** In minutes from midnight before Monday, in order and apart. */
  readonly sessions: readonly Session[];
  /** The number of the first day, where a date was given. */
  readonly firstDay: number | undefined;
  /** 0 for Monday. */
  readonly firstWeekday: number;
}

/** Working hours and first day of a job. Without a date the first day is the week’s first working day. */
export function shopHours({ shop, work }: Pick<JobDocument, 'shop' | 'work'>): ShopHours {
  const sessions = joined(
    (shop.hours ?? USUAL).flatMap(({ days, from, to }) =>
      days.map((d): Session => {
        const midnight = DAYS.indexOf(d) * DAY;
        return { from: midnight + minutes(from), to: midnight + minutes(to) };
      }),
    ),
  );
  const firstDay = work.start === undefined ? undefined : dayNumber(work.start);
  const firstWeekday = firstDay === undefined ? Math.floor(sessions[0]!.from / DAY) : weekdayOf(firstDay);
  return { workingTime: weekly(sessions, firstWeekday), sessions, firstDay, firstWeekday };
}

/** Sessions in order; those that overlap or touch are one. */
function joined(sessions: readonly Session[]): readonly Session[] {
  const out: Session[] = [];
  for (const s of [...sessions].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const last = out.at(-1);
    if (last && s.from <= last.to) out[out.length - 1] = { from: last.from, to: Math.max(last.to, s.to) };
    else out.push(s);
  }
  return out;
}

function minutes(clock: string): number {
  const [hours, past] = clock.split(':');
  return Number(hours) * 60 + Number(past);
}
