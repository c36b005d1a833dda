import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/** Does the shop’s mitre saw take this part on edge against its fence? Then it cuts its ends squarer than a portable saw. */
export function mitreSawFor(bench: Bench, part: Part): boolean {
  const saw = bench.tool('mitre-saw');
  if (!saw) return false;
  if (!bench.tool('circular-saw')) return true;
  const l = bench.ledger;
  return l.ticks(part.rough?.width ?? part.width) <= l.ticks(bench.ofTool(saw, 'height'));
}
