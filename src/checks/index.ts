export type { CheckInput, Weighed } from './check-input.ts';
export { checkPlan, checkSawing } from './check-plan.ts';
export { memberError, stackOfFit } from './fit-errors.ts';
export { madeOff } from './made-off.ts';
