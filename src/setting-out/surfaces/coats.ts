import type { FinishLot } from '../../job/index.ts';
import { FINISHES, type Finish, finish } from '../../materials/index.ts';
import type { SurfaceClass } from './surface-class.ts';

/** One more coat where it wears (common practice). */
const MORE_ON_TOP = 1;

/** The finish of the shop: its first on the rack, or a wiping varnish where there is none. */
export function finishOf(lots: readonly FinishLot[]): {
  readonly lot: FinishLot | undefined;
  readonly kind: Finish;
} {
  const lot = lots[0];
  return { lot, kind: finish(lot?.material ?? '') ?? FINISHES[0]! };
}

/** Coats on every face: by the label, or else the most that are usual; what wears most gets one more. */
export function coatsOn(lots: readonly FinishLot[], surface?: SurfaceClass): number {
  const { lot, kind } = finishOf(lots);
  return (lot?.label?.coats ?? kind.coats[1]) + (surface === 'top' ? MORE_ON_TOP : 0);
}
