import type { Network } from './network.ts';

/** A way of saying which task comes first where several could: a rank for each. */
export interface PriorityRule {
  readonly name: string;
  readonly rank: (network: Network) => readonly number[];
}

/**
 * The order given, and the rules that do best in published comparisons (Kolisch 1996): latest start, latest finish,
 * most work behind, greatest rank by position. Latest start and finish rest on the longest chain behind a task.
 */
export const PRIORITY_RULES: readonly PriorityRule[] = [
  { name: 'as written', rank: ({ tasks }) => tasks.map((_, i) => i) },
  { name: 'latest start', rank: ({ tail }) => tail.map((t) => -t) },
  {
    name: 'latest finish',
    rank: ({ tasks, tail }) => tail.map((t, i) => tasks[i]!.work + tasks[i]!.wait - t),
  },
  { name: 'most successors', rank: (network) => followers(network).map((s) => -s.size) },
  {
    name: 'most work behind',
    rank: (network) =>
      followers(network).map((s, i) => -[...s, i].reduce((sum, n) => sum + network.tasks[n]!.work, 0)),
  },
  {
    name: 'longest work',
    rank: ({ tasks }) => tasks.map((t) => -(t.work + t.wait)),
  },
];

/** All that comes after each task, directly or not. */
function followers({ tasks, behind }: Network): readonly ReadonlySet<number>[] {
  const all: Set<number>[] = tasks.map(() => new Set());
  for (let i = tasks.length - 1; i >= 0; i--)
    for (const n of behind[i]!) {
      all[i]!.add(n);
      for (const further of all[n]!) all[i]!.add(further);
    }
  return all;
}
