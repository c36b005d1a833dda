import { Ledger } from '../../measure/index.ts';
import { Dimensions, type SetOut } from '../../setting-out/index.ts';
import type { Packed } from './messages.ts';

/** A plan made ready to be sent to another thread, where ledger and names would lose their methods. */
export function pack<P extends { readonly setOut: SetOut }>(plan: P): Packed<P> {
  return {
    ...plan,
    setOut: { ...plan.setOut, ledger: plan.setOut.ledger.data(), dimensions: plan.setOut.dimensions.data() },
  };
}

export function unpack<P extends { readonly setOut: SetOut }>(plan: Packed<P>): P {
  return {
    ...plan,
    setOut: {
      ...plan.setOut,
      ledger: Ledger.from(plan.setOut.ledger),
      dimensions: Dimensions.from(plan.setOut.dimensions),
    },
  } as unknown as P;
}
