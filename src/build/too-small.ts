import { HOLDING } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';

/** A straight cut across a piece of wood. */
interface Cut {
  readonly of: { readonly length: Traced; readonly width: Traced };
  readonly across: 'length' | 'width';
  readonly at: Traced;
}

/** True where a piece is so small that it can’t be held under a power saw with hands clear of its blade. */
export function isTooSmall(
  bench: Bench,
  saw: 'circular-saw' | 'mitre-saw',
  { of, across, at }: Cut,
): boolean {
  const t = (x: Traced): number => bench.ledger.ticks(x);
  if (saw === 'mitre-saw')
    return Math.max(t(at), t(of[across]) - t(at) - t(bench.kerfOf(saw))) < HOLDING.mitreSaw;
  return Math.max(t(of.length), t(of.width)) < HOLDING.board;
}

/** How such a piece is cut. */
export const BY_HAND = [
  'It is too small to be held under a power saw: clamp it down, cut on the waste side of the line with a fine handsaw, and bring it to the line with a plane or a sanding block.',
] as const;
