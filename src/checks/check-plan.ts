import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';

export function checkPlan(_input: CheckInput): readonly Snag[] {
  return [];
}
