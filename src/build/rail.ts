import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';

/** Is a piece of this width too narrow to carry the guide rail? */
export function underRail(bench: Bench, width: Traced): boolean {
  const rail = bench.tool('guide-rail');
  return rail !== undefined && bench.ledger.ticks(width) < bench.ledger.ticks(bench.ofTool(rail, 'width'));
}
