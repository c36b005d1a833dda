import { readList } from '../../src/breakdown/index.ts';
import type { Shop } from '../../src/job/index.ts';
import { type ListPlan, planList } from '../../src/plan/index.ts';

/** A maker’s own list, cut from the rack of a shop. */
export function listed(text: string, shop: Shop): ListPlan {
  const read = readList(text, shop);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planList(shop, read.rows, { effort: 300_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}
