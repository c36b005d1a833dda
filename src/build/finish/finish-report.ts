import type { Report } from '../../measure/index.ts';
import type { FinishPlan } from './finish-plan.ts';

/** How a piece is finished, documented as `finishing` of `plan --json`. Litres and areas to the hundredth. */
export function finishReport(plan: FinishPlan): Report {
  return {
    finish: plan.kind.id,
    lot: plan.lot?.id,
    coats: plan.coats,
    coverage_m2_per_litre: plan.coverageM2PerL,
    coverage_from: plan.coverageFrom,
    classes: plan.classes.map((c) => ({
      class: c.surface,
      area_m2: hundredth(c.areaM2),
      coats: c.coats,
      litres: hundredth(c.litres),
    })),
    area_m2: hundredth(plan.areaM2),
    litres: hundredth(plan.litres),
    before_assembly: plan.before,
  };
}

function hundredth(x: number): number {
  return Math.round(x * 100) / 100;
}
