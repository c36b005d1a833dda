import type { Need, Resource, Span, Task } from './task.ts';
import type { WorkingTime } from './working-time.ts';

/** Tasks by number, so that schedules are quick to make: numbers stand in the order given. */
export interface Network {
  readonly tasks: readonly Task[];
  /** What each task needs, and what needs it. */
  readonly before: readonly (readonly number[])[];
  readonly behind: readonly (readonly number[])[];
  readonly needs: readonly (readonly NumberedNeed[])[];
  readonly there: readonly number[];
  /** Minutes from each task’s start to the end of the longest chain behind it, hands and tools being no limit. */
  readonly tail: readonly number[];
  readonly workingTime: WorkingTime;
}

export interface NumberedNeed extends Pick<Need, 'amount' | 'until'> {
  readonly resource: number;
}

/** The spans of all tasks of a network, by number. */
export type Timetable = readonly Span[];

/** Numbers the tasks. Throws when a task needs what isn’t there, or more of it than there is: that is our mistake. */
export function networkOf(
  tasks: readonly Task[],
  resources: readonly Resource[],
  workingTime: WorkingTime,
): Network {
  const number = new Map(tasks.map((t, i) => [t.id, i]));
  const place = new Map(resources.map((r, i) => [r.id, i]));
  const before = tasks.map((t) =>
    t.after.map((id) => {
      const n = number.get(id);
      if (n === undefined) throw new Error(`${t.id} needs ${id}, which nobody does`);
      return n;
    }),
  );
  const behind: number[][] = tasks.map(() => []);
  before.forEach((of, i) => {
    for (const n of of) behind[n]!.push(i);
  });
  const needs = tasks.map((t) =>
    t.needs.map(({ resource, amount, until }): NumberedNeed => {
      const r = place.get(resource);
      if (r === undefined || resources[r]!.there < amount)
        throw new Error(`${t.id} needs ${amount} of ${resource}: there isn’t so much`);
      return { resource: r, amount, until };
    }),
  );
  return {
    tasks,
    before,
    behind,
    needs,
    there: resources.map((r) => r.there),
    tail: tails(tasks, before),
    workingTime,
  };
}

function tails(tasks: readonly Task[], before: readonly (readonly number[])[]): readonly number[] {
  const tail = tasks.map((t) => t.work + t.wait);
  for (let i = tasks.length - 1; i >= 0; i--)
    for (const n of before[i]!) {
      if (n >= i) throw new Error(`${tasks[i]!.id} stands before ${tasks[n]!.id}, which it needs`);
      const { work, wait } = tasks[n]!;
      tail[n] = Math.max(tail[n]!, work + wait + tail[i]!);
    }
  return tail;
}

/** The moment when all is ready. */
export function lengthOf(timetable: Timetable): number {
  return timetable.reduce((latest, s) => Math.max(latest, s.ready), 0);
}
