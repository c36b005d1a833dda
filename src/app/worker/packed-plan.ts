import { Ledger } from '../../measure/index.ts';
import type { SetOut } from '../../setting-out/index.ts';
import type { Packed } from './messages.ts';

/** A plan made ready to be sent to another thread, where a ledger would lose its methods. */
export function pack<P extends { readonly setOut: SetOut }>(plan: P): Packed<P> {
  return { ...plan, setOut: { ...plan.setOut, ledger: plan.setOut.ledger.data() } };
}

export function unpack<P extends { readonly setOut: SetOut }>(plan: Packed<P>): P {
  return { ...plan, setOut: { ...plan.setOut, ledger: Ledger.from(plan.setOut.ledger) } } as unknown as P;
}
