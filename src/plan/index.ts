export type { CostRow, Costs } from './costs.ts';
export { dryFitInput } from './dry-fit-input.ts';
export type { Hours, Plan, PlanProgress } from './plan.ts';
export type { PlanOptions } from './plan-job.ts';
export { planJob } from './plan-job.ts';
export type { ListPlan } from './plan-list.ts';
export { listReport, planList } from './plan-list.ts';
export { planReport } from './plan-report.ts';
export { toleranceOf, toleranceReport } from './tolerance.ts';
