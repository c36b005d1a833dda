import { Ledger } from '../../measure/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { PackedPlan } from './messages.ts';

/** A plan made ready to be sent to another thread, where a ledger would lose its methods. */
export function pack(plan: Plan): PackedPlan {
  return { ...plan, setOut: { ...plan.setOut, ledger: plan.setOut.ledger.data() } };
}

export function unpack(plan: PackedPlan): Plan {
  return { ...plan, setOut: { ...plan.setOut, ledger: Ledger.from(plan.setOut.ledger) } };
}
