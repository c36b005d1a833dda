import { exact } from './exact.ts';
import { justify } from './justify.ts';
import { lengthOf, type Network, type Timetable } from './network.ts';
import { PRIORITY_RULES } from './priority-rules.ts';
import { serialGeneration } from './serial-generation.ts';

/** A timetable and how sure it is that none is shorter. */
export interface ShortestSchedule {
  readonly timetable: Timetable;
  readonly proven: boolean;
}

/** Where the search may end early. */
export interface SearchLimits {
  /** No timetable is shorter than this, or none need be. */
  readonly enough: number;
  /** Up to so many tasks are also searched exactly, in so many nodes. */
  readonly exactTasks: number;
  readonly nodes: number;
  /** What is kept together: the rank of a task is that of its foremost companion, and among companions the order given. */
  readonly companions?: readonly number[];
  /** A timetable counts as shorter when it is so by whole steps of this, such as a day; a minute when absent. */
  readonly step?: number;
}

/**
 * A short timetable: every priority rule, each made better by forward and backward passes, and for few tasks the exact
 * search. Of equals the first counts, and the first rule is the order given. Ends by counted work.
 */
export function shortestSchedule(network: Network, limits: SearchLimits): ShortestSchedule {
  let best: Timetable | undefined;
  const steps = (t: Timetable) => Math.ceil(lengthOf(t) / (limits.step ?? 1));
  const shorter = (t: Timetable) => !best || steps(t) < steps(best);
  const ranked = (rank: readonly number[]) => together(rank, limits.companions);
  const done = () => best !== undefined && lengthOf(best) <= limits.enough;
  for (const rule of PRIORITY_RULES) {
    const found = serialGeneration(network, ranked(rule.rank(network)));
    if (shorter(found)) best = found;
    if (done()) break;
    const better = justify(network, found, ranked);
    if (shorter(better)) best = better;
    if (done()) break;
  }
  if (done() || network.tasks.length > limits.exactTasks) return { timetable: best!, proven: done() };
  const { timetable, proven } = exact(network, best!, limits.nodes);
  return { timetable: shorter(timetable) ? timetable : best!, proven };
}

/** Ranks under which companions follow one another in the order given. */
function together(rank: readonly number[], companions: readonly number[] | undefined): readonly number[] {
  if (!companions) return rank;
  const foremost = new Map<number, number>();
  companions.forEach((c, i) => {
    foremost.set(c, Math.min(foremost.get(c) ?? Infinity, rank[i]!));
  });
  const order = rank
    .map((_, i) => i)
    .sort(
      (a, b) =>
        foremost.get(companions[a]!)! - foremost.get(companions[b]!)! ||
        companions[a]! - companions[b]! ||
        a - b,
    );
  const out = new Array<number>(rank.length);
  order.forEach((task, place) => {
    out[task] = place;
  });
  return out;
}
