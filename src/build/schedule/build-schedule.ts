import type { JobDocument } from '../../job/index.ts';
import { type Operation, STAGES } from '../operation.ts';
import { criticalPath } from './critical-path.ts';
import { lengthOf, networkOf, type Timetable } from './network.ts';
import type { Schedule, ScheduledOperation } from './schedule.ts';
import { serialGeneration } from './serial-generation.ts';
import { shopHours } from './shop-hours.ts';
import { shortestSchedule } from './shortest-schedule.ts';
import { resourcesOf, taskOf, workers } from './tasks-of-build.ts';
import { whoDoesWhat } from './who.ts';
import { DAY } from './working-time.ts';

/** Few enough operations that every order can be looked into. */
const EXACT_TASKS = 30;
const EXACT_NODES = 20_000;

/** Operations in the order in which they are begun, and when. */
export interface ScheduledBuild {
  readonly operations: readonly Operation[];
  readonly schedule: Schedule;
}

/**
 * Says when each operation is done, with the people, tools, clamps and working hours of the shop, glue and coats
 * curing meanwhile. The order written is kept unless another order of whole stages ends on an earlier day. Operations
 * must stand after all they need.
 */
export function scheduleBuild(
  job: Pick<JobDocument, 'shop' | 'work'>,
  operations: readonly Operation[],
): ScheduledBuild {
  const hours = shopHours(job);
  const tasks = operations.map((o) => taskOf(job.shop, o));
  const people = workers(job.shop);
  const network = networkOf(tasks, resourcesOf(job.shop), hours.workingTime);
  const alone = networkOf(
    tasks.map((t) => ({ ...t, needs: [] })),
    [],
    hours.workingTime,
  );
  const asWritten = tasks.map((_, i) => i);
  const work = tasks.reduce((sum, t) => sum + t.work, 0);
  const byHours = hours.workingTime.fit(0, Math.ceil(work / Math.max(1, people.length)), false)[1];
  const leastDays = daysUntil(Math.max(lengthOf(serialGeneration(alone, asWritten)), byHours));
  const { timetable } = shortestSchedule(network, {
    enough: leastDays * DAY,
    exactTasks: EXACT_TASKS,
    nodes: EXACT_NODES,
    step: DAY,
    companions: operations.map((o) => STAGES.indexOf(o.stage)),
  });
  const path = criticalPath(tasks.map((t) => ({ id: t.id, duration: t.work + t.wait, after: t.after })));
  const who = whoDoesWhat(tasks, timetable, people);
  const begun = asWritten.sort((a, b) => timetable[a]!.start - timetable[b]!.start || a - b);
  return {
    operations: begun.map((i) => operations[i]!),
    schedule: {
      operations: begun.map((i): ScheduledOperation => {
        const { id } = tasks[i]!;
        const person = who.get(id);
        return {
          operation: id,
          ...timetable[i]!,
          slack: path.times.get(id)!.slack,
          who: person === undefined ? [] : [person],
        };
      }),
      firstDay: hours.firstDay,
      firstWeekday: hours.firstWeekday,
      sessions: hours.sessions,
      days: daysBetween(timetable),
      leastDays,
      critical: path.critical,
      criticalMinutes: path.duration,
    },
  };
}

/** Days up to a moment, the day it lies on counted; midnight belongs to the day that ends. */
function daysUntil(moment: number): number {
  return Math.max(1, Math.ceil(moment / DAY));
}

function daysBetween(timetable: Timetable): number {
  if (timetable.length === 0) return 0;
  const first = timetable.reduce((m, s) => Math.min(m, s.start), Infinity);
  return daysUntil(lengthOf(timetable)) - Math.floor(first / DAY);
}
