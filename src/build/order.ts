import type { Operation } from './operation.ts';
import { STAGES } from './stages.ts';

/**
 * Operations in an order in which each comes after all it needs: by stage, then as written down, as far as their
 * needs allow. Throws when they need one another in a circle, or need what isn't there: that is our mistake.
 */
export function inOrder(operations: readonly Operation[]): readonly Operation[] {
  const byId = new Map(operations.map((o) => [o.id, o]));
  const twice = operations.find((o) => byId.get(o.id) !== o);
  if (twice) throw new Error(`two operations have one id, ${twice.id}`);
  const rank = new Map(operations.map((o, i) => [o.id, STAGES.indexOf(o.stage) * operations.length + i]));
  const sorted = [...operations].sort((a, b) => rank.get(a.id)! - rank.get(b.id)!);
  const done = new Set<string>();
  const under = new Set<string>();
  const order: Operation[] = [];
  const visit = (o: Operation): void => {
    if (done.has(o.id)) return;
    if (under.has(o.id)) throw new Error(`operations need one another in a circle: ${o.id}`);
    under.add(o.id);
    for (const id of [...o.after].sort((a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0))) {
      const needed = byId.get(id);
      if (!needed) throw new Error(`${o.id} needs ${id}, which nobody does`);
      visit(needed);
    }
    under.delete(o.id);
    done.add(o.id);
    order.push(o);
  };
  for (const o of sorted) visit(o);
  return order;
}
