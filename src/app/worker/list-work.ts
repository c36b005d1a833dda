import { readList } from '../../breakdown/index.ts';
import type { Shop } from '../../job/index.ts';
import { type ListPlan, planList } from '../../plan/index.ts';
import type { Snag } from '../../snag/index.ts';

/** A pasted list cut from the rack, or everything that is wrong with it. */
export type ListCut =
  | { readonly ok: true; readonly plan: ListPlan; readonly notes: readonly Snag[] }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** Reads and plans a pasted list; pauses with planning, so that the caller can look whether it is still wanted. */
export function* cutList(text: string, shop: Shop): Generator<undefined, ListCut> {
  const read = readList(text, shop);
  if (!read.ok) return read;
  const planning = planList(shop, read.rows);
  let step = planning.next();
  while (!step.done) {
    yield undefined;
    step = planning.next();
  }
  return { ok: true, plan: step.value, notes: read.notes };
}
