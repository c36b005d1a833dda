import type { Network, Timetable } from './network.ts';
import { ResourceUse } from './resource-use.ts';
import type { Span } from './task.ts';

/**
 * Places tasks one after the other, each as early as what it needs, hands, tools and working hours allow. `rank` says
 * which comes first of those that could be placed; the lower number, or of equals the lower task. Source: the serial
 * schedule generation scheme (Kelley 1963; Kolisch 1996).
 */
export function serialGeneration(network: Network, rank: readonly number[]): Timetable {
  const { tasks, before, behind } = network;
  const use = network.there.map((there) => new ResourceUse(there));
  const lacking = before.map((b) => b.length);
  const spans: Span[] = new Array(tasks.length);
  const waiting = tasks.flatMap((_, i) => (lacking[i] === 0 ? [i] : []));
  const first = (a: number, b: number) => rank[a]! < rank[b]! || (rank[a] === rank[b] && a < b);
  while (waiting.length > 0) {
    let at = 0;
    for (let i = 1; i < waiting.length; i++) if (first(waiting[i]!, waiting[at]!)) at = i;
    const [task] = waiting.splice(at, 1) as [number];
    const from = before[task]!.reduce((m, n) => Math.max(m, spans[n]!.ready), 0);
    spans[task] = earliest(network, use, task, from);
    hold(network, use, task, spans[task]!, 1);
    for (const n of behind[task]!) if (--lacking[n]! === 0) waiting.push(n);
  }
  return spans;
}

/** The earliest span of a task from a moment on. */
export function earliest(network: Network, use: readonly ResourceUse[], task: number, from: number): Span {
  const { work, wait, unbroken } = network.tasks[task]!;
  let moment = from;
  for (;;) {
    const [start, end] = network.workingTime.fit(moment, work, unbroken);
    const ready = end + wait;
    let later = -1;
    for (const { resource, amount, until } of network.needs[task]!) {
      const lacking = use[resource]!.lackingUntil(start, until === 'ready' ? ready : end, amount);
      if (lacking !== undefined && lacking > later) later = lacking;
    }
    if (later < 0) return { start, end, ready };
    moment = later;
  }
}

/** Takes what a task needs over its span, or gives it back with -1. */
export function hold(
  network: Network,
  use: readonly ResourceUse[],
  task: number,
  { start, end, ready }: Span,
  times: 1 | -1,
): void {
  for (const { resource, amount, until } of network.needs[task]!)
    use[resource]!.take(start, until === 'ready' ? ready : end, amount * times);
}
