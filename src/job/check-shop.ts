import type { Snag } from '../snag/index.ts';
import { checkForm } from './check-form.ts';
import { checkLengths } from './check-lengths.ts';
import { checkReferences } from './check-references.ts';
import { VERSION } from './document.ts';
import type { Shop } from './shop/shop.ts';

/** A shop that has been read: either a valid one, or everything that is wrong with it. */
export type CheckedShop =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** Checks a shop that stands alone, without a design to build in it. Every fault is told at once, with its path. */
export function checkShop(value: unknown): CheckedShop {
  const form = checkForm({ version: VERSION, design: { records: [] }, shop: value, work: {} });
  const faults = form.ok ? [] : form.snags;
  const job = form.ok ? form.job : form.rest.job;
  const snags = form.ok ? [...checkReferences(job), ...checkLengths(job)] : faults;
  return snags.length > 0 ? { ok: false, snags } : { ok: true, shop: job.shop };
}
