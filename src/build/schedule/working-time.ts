/** When work is done: stretches of a week, in minutes from midnight before Monday, in order and apart. */
export interface WorkingTime {
  /** The first span at or after a moment in which so many minutes of work are done. */
  readonly fit: (from: number, minutes: number, unbroken: boolean) => readonly [start: number, end: number];
  /** The last such span that ends by a moment. */
  readonly fitBefore: (
    until: number,
    minutes: number,
    unbroken: boolean,
  ) => readonly [start: number, end: number];
}

/** A stretch of working time. */
export interface Session {
  readonly from: number;
  readonly to: number;
}

export const DAY = 24 * 60;
const WEEK = 7 * DAY;

/** Work at any hour: for reckoning without a calendar. */
export const ROUND_THE_CLOCK: WorkingTime = {
  fit: (from, minutes) => [from, from + minutes],
  fitBefore: (until, minutes) => [until - minutes, until],
};

/**
 * Working time that comes again every week. Moments are minutes from midnight before the first day, whose weekday
 * (0 for Monday) is given. Work that is longer than any session, or may be left half done, goes on in the next.
 */
export function weekly(sessions: readonly Session[], firstWeekday: number): WorkingTime {
  if (sessions.length === 0) throw new Error('a week without working time');
  const longest = Math.max(...sessions.map((s) => s.to - s.from));
  const shift = firstWeekday * DAY;
  /** The n-th session, counted from the Monday at or before the first day. */
  const session = (n: number): Session => {
    const week = Math.floor(n / sessions.length);
    const { from, to } = sessions[n - week * sessions.length]!;
    return { from: from + week * WEEK - shift, to: to + week * WEEK - shift };
  };
  /** The first session that ends after a moment. */
  const openAt = (moment: number): number => {
    let n = Math.floor((moment + shift) / WEEK) * sessions.length;
    while (session(n).to <= moment) n++;
    return n;
  };
  /** The last session that begins before a moment. */
  const begunBy = (moment: number): number => {
    let n = (Math.floor((moment + shift) / WEEK) + 1) * sessions.length;
    while (session(n).from >= moment) n--;
    return n;
  };
  return {
    fit: (from, minutes, unbroken) => {
      if (minutes === 0) return [from, from];
      const whole = unbroken && minutes <= longest;
      let n = openAt(from);
      let start = Math.max(from, session(n).from);
      while (whole && session(n).to - start < minutes) start = session(++n).from;
      let left = minutes;
      let at = start;
      while (session(n).to - at < left) {
        left -= session(n).to - at;
        at = session(++n).from;
      }
      return [start, at + left];
    },
    fitBefore: (until, minutes, unbroken) => {
      if (minutes === 0) return [until, until];
      const whole = unbroken && minutes <= longest;
      let n = begunBy(until);
      let end = Math.min(until, session(n).to);
      while (whole && end - session(n).from < minutes) end = session(--n).to;
      let left = minutes;
      let at = end;
      while (at - session(n).from < left) {
        left -= at - session(n).from;
        at = session(--n).to;
      }
      return [at - left, end];
    },
  };
}
