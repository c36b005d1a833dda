import type { LotBreakdown } from './break-down.ts';

/** How far a lot's plan is proven, and whether the clock ended the search for a better one. */
export function provenWords({ plan, sheets }: Pick<LotBreakdown, 'plan' | 'sheets'>): string {
  const used = `${sheets.length} used`;
  const clock = plan.endedByClock
    ? '; the search was ended before its time, and another run may end elsewhere'
    : '';
  if (plan.unplaced.some((u) => u.why !== 'larger-than-all-stock')) return `${used}, and not enough${clock}`;
  if (plan.proven) return `${used}: proven, no plan costs less`;
  if (plan.bound.sheets >= sheets.length) return `${used}: no plan can do with fewer${clock}`;
  return `${used}; any plan needs at least ${plan.bound.sheets}${clock}`;
}
