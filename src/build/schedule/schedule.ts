import type { Session } from './working-time.ts';

/** When an operation is done. Moments are whole minutes from midnight before the first day. */
export interface ScheduledOperation {
  readonly operation: string;
  readonly start: number;
  /** The work is done. */
  readonly end: number;
  /** Glue has set, a coat is dry; the end of the work where there is nothing to wait for. */
  readonly ready: number;
  /** Minutes by which it could be put off, were there always hands and tools. */
  readonly slack: number;
  /** Ids of the people who do it. */
  readonly who: readonly string[];
}

/** Who does what when. */
export interface Schedule {
  /** In the order of the operations. */
  readonly operations: readonly ScheduledOperation[];
  /** The number of the first day (see `dateOf`), where the job gives a date. */
  readonly firstDay: number | undefined;
  /** The weekday of the first day, 0 for Monday. */
  readonly firstWeekday: number;
  /** Working hours of a week, in minutes from midnight before Monday. */
  readonly sessions: readonly Session[];
  /** Days from the first to the last on which there is something to do, both counted. */
  readonly days: number;
  /** No order of work takes fewer days: by the longest chain, or by the hours of those who work. */
  readonly leastDays: number;
  /** Operations of the longest chain, which have no slack, and how long it is with its waiting, in minutes. */
  readonly critical: readonly string[];
  readonly criticalMinutes: number;
}
