import type { Report } from '../../measure/index.ts';
import type { BuildPlan } from '../build-plan.ts';
import { type WrittenMoment, writtenMoment } from './moment.ts';

/** The schedule as a report, documented as `schedule` of `plan --json`. */
export function scheduleReport({ schedule, operations }: BuildPlan): Report {
  const at = (moment: number, ends = false) => momentReport(writtenMoment(schedule, moment, ends));
  const active = operations.reduce((sum, o) => sum + o.minutes.active, 0);
  return {
    active_hours: hours(active),
    elapsed_days: schedule.days,
    least_days: schedule.leastDays,
    critical_path: schedule.critical,
    critical_path_hours: hours(schedule.criticalMinutes),
    operations: schedule.operations.map((o) => ({
      operation: o.operation,
      start: at(o.start),
      end: at(o.end, true),
      ready: o.ready > o.end ? at(o.ready, true) : undefined,
      slack_hours: hours(o.slack),
      who: o.who,
    })),
  };
}

/** A moment as a report. */
export function momentReport({ day, date, weekday, time }: WrittenMoment): Report {
  return { day, date, weekday, time };
}

function hours(minutes: number): number {
  return Math.round((minutes / 60) * 100) / 100;
}
