import { lengthOf, type Network, type Timetable } from './network.ts';
import { ResourceUse } from './resource-use.ts';
import { hold, serialGeneration } from './serial-generation.ts';
import type { Span } from './task.ts';

/**
 * Makes a timetable shorter by pushing every task as late as it can be, latest first, and then as early as it can be,
 * in that order. Goes on while that helps. Source: forward-backward improvement (Tormos and Lova 2001), justification
 * (Valls, Ballestín and Quintanilla 2005).
 */
export function justify(
  network: Network,
  timetable: Timetable,
  ranked: (rank: readonly number[]) => readonly number[] = (rank) => rank,
): Timetable {
  let best = timetable;
  for (;;) {
    const late = pushedLate(network, best);
    const early = serialGeneration(network, ranked(late.map((s) => s.start)));
    if (lengthOf(early) >= lengthOf(best)) return best;
    best = early;
  }
}

/** Every task as late as it can be without making the whole longer. */
function pushedLate(network: Network, timetable: Timetable): Timetable {
  const whole = lengthOf(timetable);
  const use = network.there.map((there) => new ResourceUse(there));
  const late: Span[] = new Array(timetable.length);
  const order = timetable.map((_, i) => i).sort((a, b) => timetable[b]!.ready - timetable[a]!.ready || b - a);
  const placed = new Set<number>();
  const visit = (task: number): void => {
    if (placed.has(task)) return;
    for (const n of network.behind[task]!) visit(n);
    placed.add(task);
    const until = network.behind[task]!.reduce((m, n) => Math.min(m, late[n]!.start), whole);
    late[task] = latest(network, use, task, until);
    hold(network, use, task, late[task]!, 1);
  };
  for (const task of order) visit(task);
  return late;
}

/** The latest span of a task that is ready by a moment. */
function latest(network: Network, use: readonly ResourceUse[], task: number, until: number): Span {
  const { work, wait, unbroken } = network.tasks[task]!;
  let by = until - wait;
  for (;;) {
    const [start, end] = network.workingTime.fitBefore(by, work, unbroken);
    const ready = end + wait;
    let sooner = Infinity;
    for (const { resource, amount, until: held } of network.needs[task]!) {
      const lacking = use[resource]!.lackingFrom(start, held === 'ready' ? ready : end, amount);
      if (lacking !== undefined) sooner = Math.min(sooner, held === 'ready' ? lacking - wait : lacking);
    }
    if (sooner === Infinity) return { start, end, ready };
    by = sooner;
  }
}
