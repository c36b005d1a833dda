import { lengthOf, type Network, type Timetable } from './network.ts';
import { ResourceUse } from './resource-use.ts';
import { earliest, hold } from './serial-generation.ts';
import type { Span } from './task.ts';

/** What the search came to: the best timetable found, and whether there can be none shorter. */
export interface Exact {
  readonly timetable: Timetable;
  readonly proven: boolean;
  readonly nodes: number;
}

/** States remembered of one set of placed tasks. */
const MOST_REMEMBERED = 40;

/**
 * Branch and bound over the order in which tasks start, each as early as it can in that order. A branch ends when a
 * task placed last could have begun earlier (that timetable comes up in another order), when what is left can’t be
 * done in time, or when the same tasks were placed before and all of them were free sooner. Every need is held from its
 * task’s start, so an optimum is among these. Ends after `budget` nodes. Source: precedence tree (Patterson et al.
 * 1989) with left shift and cut set rules (Demeulemeester and Herroelen 1992).
 */
export function exact(network: Network, known: Timetable, budget: number): Exact {
  const { tasks, before, behind, tail } = network;
  const n = tasks.length;
  const least = Math.max(0, ...tail);
  let best = known;
  let shortest = lengthOf(known);
  let nodes = 0;
  const use = network.there.map((there) => new ResourceUse(there));
  const spans: (Span | undefined)[] = new Array(n).fill(undefined);
  const lacking = before.map((b) => b.length);
  const seen = new Map<string, State[]>();
  const work = network.there.map((_, r) => ({
    there: network.there[r]!,
    left: tasks.reduce((sum, _t, i) => sum + demand(network, i, r), 0),
  }));

  const from = (task: number) => before[task]!.reduce((m, b) => Math.max(m, spans[b]!.ready), 0);

  const hopeless = (last: number): boolean => {
    for (const { there, left } of work) if (last + left / there >= shortest) return true;
    const head: number[] = new Array(n);
    for (let i = 0; i < n; i++) {
      if (spans[i]) continue;
      let at = last;
      for (const b of before[i]!) at = Math.max(at, spans[b]?.ready ?? head[b]!);
      if (at + tail[i]! >= shortest) return true;
      head[i] = at + tasks[i]!.work + tasks[i]!.wait;
    }
    return false;
  };

  /** True when these tasks were placed before with every one of them free no later than now. */
  const seenBetter = (last: number): boolean => {
    const key = spans.map((s) => (s ? '1' : '0')).join('');
    const state: State = { last, spans: spans.map((s) => s) };
    const states = seen.get(key);
    if (!states) {
      seen.set(key, [state]);
      return false;
    }
    if (states.some((s) => noLater(s, state))) return true;
    if (states.length < MOST_REMEMBERED) states.push(state);
    return false;
  };

  const place = (count: number, last: number): void => {
    if (shortest <= least || nodes >= budget) return;
    nodes++;
    if (count === n) {
      const found = spans.map((s) => s!);
      if (lengthOf(found) < shortest) {
        best = found;
        shortest = lengthOf(found);
      }
      return;
    }
    if (hopeless(last) || seenBetter(last)) return;
    const ready = tasks.flatMap((_, i) => (!spans[i] && lacking[i] === 0 ? [i] : []));
    const options = ready
      .map((task) => ({ task, span: earliest(network, use, task, from(task)) }))
      .filter(({ span }) => span.start >= last)
      .sort((a, b) => a.span.start - b.span.start || tail[b.task]! - tail[a.task]! || a.task - b.task);
    for (const { task, span } of options) {
      spans[task] = span;
      hold(network, use, task, span, 1);
      for (const b of behind[task]!) lacking[b]!--;
      for (let r = 0; r < work.length; r++) work[r]!.left -= demand(network, task, r);
      place(count + 1, span.start);
      for (let r = 0; r < work.length; r++) work[r]!.left += demand(network, task, r);
      for (const b of behind[task]!) lacking[b]!++;
      hold(network, use, task, span, -1);
      spans[task] = undefined;
    }
  };
  place(0, 0);
  return { timetable: best, proven: shortest <= least || nodes < budget, nodes };
}

interface State {
  readonly last: number;
  readonly spans: readonly (Span | undefined)[];
}

/** Are all tasks of `a` free no later than those of `b`, as far as it matters for what starts from `b.last` on? */
function noLater(a: State, b: State): boolean {
  return (
    a.last <= b.last &&
    a.spans.every((s, i) => {
      const o = b.spans[i];
      if (!s || !o) return true;
      return (
        s.start <= Math.max(b.last, o.start) &&
        s.end <= Math.max(b.last, o.end) &&
        s.ready <= Math.max(b.last, o.ready)
      );
    })
  );
}

/** What a task takes of a resource, amount times minutes. */
function demand(network: Network, task: number, resource: number): number {
  const { work, wait } = network.tasks[task]!;
  return network.needs[task]!.reduce(
    (sum, need) =>
      need.resource === resource ? sum + need.amount * (need.until === 'ready' ? work + wait : work) : sum,
    0,
  );
}
