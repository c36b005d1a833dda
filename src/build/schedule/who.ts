import type { Timetable } from './network.ts';
import type { Task } from './task.ts';

/**
 * Gives each task its hands: whoever is free and did something it rests on, or else whoever is free first in the list.
 * A task without work needs nobody.
 */
export function whoDoesWhat(
  tasks: readonly Task[],
  timetable: Timetable,
  people: readonly string[],
): ReadonlyMap<string, string> {
  const busyUntil = new Map(people.map((p) => [p, -Infinity]));
  const who = new Map<string, string>();
  const order = tasks.map((_, i) => i).sort((a, b) => timetable[a]!.start - timetable[b]!.start || a - b);
  for (const i of order) {
    const { id, work, after } = tasks[i]!;
    if (work === 0) continue;
    const free = people.filter((p) => busyUntil.get(p)! <= timetable[i]!.start);
    const knows = free.find((p) => after.some((a) => who.get(a) === p));
    const person = knows ?? free[0];
    if (person === undefined) continue;
    who.set(id, person);
    busyUntil.set(person, timetable[i]!.end);
  }
  return who;
}
