import type { Need, Span, Task } from './task.ts';
import type { WorkingTime } from './working-time.ts';

/** A task made of those that go on without a break, and which they are. */
export interface JoinedTask {
  readonly task: Task;
  /** Places of its members in the list given, in order. */
  readonly members: readonly number[];
}

/**
 * Makes one task of all that bear the same name: glue is spread, closed, clamped and checked without a break. Its needs
 * are the greatest of its members’. In an order in which each stands after all it needs, otherwise as given.
 */
export function joinedTasks(
  tasks: readonly Task[],
  together: readonly (string | undefined)[],
): readonly JoinedTask[] {
  const groups = new Map<string, number[]>();
  tasks.forEach((t, i) => {
    const key = together[i] ?? `alone ${t.id}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  const groupOf = new Map<string, number[]>();
  for (const members of groups.values()) for (const i of members) groupOf.set(tasks[i]!.id, members);
  const done = new Set<number[]>();
  const under = new Set<number[]>();
  const order: JoinedTask[] = [];
  const visit = (members: number[]): void => {
    if (done.has(members)) return;
    if (under.has(members)) throw new Error(`tasks need one another in a circle: ${tasks[members[0]!]!.id}`);
    under.add(members);
    const before = new Set(
      members.flatMap((i) => tasks[i]!.after.map((id) => groupOf.get(id)!)).filter((g) => g !== members),
    );
    for (const g of [...before].sort((a, b) => a[0]! - b[0]!)) visit(g);
    done.add(members);
    order.push({
      task: joined(
        members.map((i) => tasks[i]!),
        [...before].map((g) => tasks[g[0]!]!.id),
      ),
      members,
    });
  };
  for (const members of groups.values()) visit(members);
  return order;
}

function joined(members: readonly Task[], after: readonly string[]): Task {
  const needs = new Map<string, Need>();
  for (const n of members.flatMap((t) => t.needs)) {
    const known = needs.get(n.resource);
    const until = known?.until === 'ready' || n.until === 'ready' ? 'ready' : 'worked';
    needs.set(n.resource, { ...n, amount: Math.max(n.amount, known?.amount ?? 0), until });
  }
  return {
    id: members[0]!.id,
    work: members.reduce((sum, t) => sum + t.work, 0),
    wait: members.at(-1)!.wait,
    unbroken: members.some((t) => t.unbroken),
    after,
    needs: [...needs.values()],
  };
}

/** The spans of a joined task’s members, one after the other from its start. */
export function spansOfMembers(
  members: readonly Task[],
  whole: Span,
  workingTime: WorkingTime,
): readonly Span[] {
  let at = whole.start;
  return members.map((t) => {
    const [start, end] = workingTime.fit(at, t.work, false);
    at = end;
    return { start, end, ready: end + t.wait };
  });
}
