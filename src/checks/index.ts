export type { CheckInput } from './check-input.ts';
export { checkPlan } from './check-plan.ts';
