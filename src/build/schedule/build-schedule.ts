import type { JobDocument } from '../../job/index.ts';
import type { Operation } from '../operation.ts';
import { STAGES } from '../stages.ts';
import { criticalPath } from './critical-path.ts';
import { lengthOf, networkOf, type Timetable } from './network.ts';
import type { Schedule, ScheduledOperation } from './schedule.ts';
import { serialGeneration } from './serial-generation.ts';
import { shopHours } from './shop-hours.ts';
import { shortestSchedule } from './shortest-schedule.ts';
import type { Task } from './task.ts';
import { resourcesOf, taskOf, workers } from './tasks-of-build.ts';
import { joinedTasks, spansOfMembers } from './together.ts';
import { whoDoesWhat } from './who.ts';
import { DAY, type WorkingTime } from './working-time.ts';

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
  const single = operations.map((o) => taskOf(job.shop, o));
  const joined = joinedTasks(
    single,
    operations.map((o) => o.together),
  );
  const tasks = joined.map((j) => j.task);
  const people = workers(job.shop);
  const network = networkOf(tasks, resourcesOf(job.shop), hours.workingTime);
  const leastDays = fewestDays(tasks, Math.max(1, people.length), hours.workingTime);
  const { timetable } = shortestSchedule(network, {
    enough: leastDays * DAY,
    exactTasks: EXACT_TASKS,
    nodes: EXACT_NODES,
    step: DAY,
    companions: joined.map(({ members }) => STAGES.indexOf(operations[members[0]!]!.stage)),
  });
  const path = criticalPath(tasks.map((t) => ({ id: t.id, duration: t.work + t.wait, after: t.after })));
  const critical = new Set(path.critical);
  const who = whoDoesWhat(tasks, timetable, people);
  const all = joined.flatMap(({ task, members }, n) => {
    const spans = spansOfMembers(
      members.map((i) => single[i]!),
      timetable[n]!,
      hours.workingTime,
    );
    const person = who.get(task.id);
    return members.map((i, m) => ({
      operation: operations[i]!,
      place: i,
      on: critical.has(task.id),
      span: spans[m]!,
      slack: path.times.get(task.id)!.slack,
      who: person === undefined ? [] : [person],
    }));
  });
  const begun = all.sort((a, b) => a.span.start - b.span.start || a.place - b.place);
  return {
    operations: begun.map((b) => b.operation),
    schedule: {
      operations: begun.map(
        ({ operation, span, slack, who: hands }): ScheduledOperation => ({
          operation: operation.id,
          ...span,
          slack,
          who: hands,
        }),
      ),
      firstDay: hours.firstDay,
      firstWeekday: hours.firstWeekday,
      sessions: hours.sessions,
      days: daysBetween(timetable),
      leastDays,
      critical: begun.filter((b) => b.on).map((b) => b.operation.id),
      criticalMinutes: path.duration,
    },
  };
}

/** No order takes fewer days than the longest chain, or than the work of so many pairs of hands. */
function fewestDays(tasks: readonly Task[], hands: number, workingTime: WorkingTime): number {
  const alone = networkOf(
    tasks.map((t) => ({ ...t, needs: [] })),
    [],
    workingTime,
  );
  const chain = serialGeneration(
    alone,
    tasks.map((_, i) => i),
  );
  const work = tasks.reduce((sum, t) => sum + t.work, 0);
  return daysUntil(Math.max(lengthOf(chain), workingTime.fit(0, Math.ceil(work / hands), false)[1]));
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
