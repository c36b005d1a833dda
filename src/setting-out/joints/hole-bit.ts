import { HOLES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** A bit so many times as wide as it must be is not taken, though the shop owns it. */
const FAR_TOO_WIDE = 1.6;

/** The width of a hole through a panel: the smallest Forstner bit or hole saw of the shop that does, or one to be bought. */
export function holeWidth(draft: Draft, least: Traced): Traced {
  const l = draft.ledger;
  const needed = l.ticks(least);
  const owned = draft.job.shop.rack.bits
    .filter((b) => b.kind === 'forstner' || b.kind === 'hole-saw')
    .map((b) => draft.typed(`shop/rack/bits/${b.id}/diameter`, b.diameter))
    .filter((d) => l.ticks(d) >= needed && l.ticks(d) <= FAR_TOO_WIDE * needed)
    .sort((a, b) => l.ticks(a) - l.ticks(b));
  return owned[0] ?? l.round('to the next hole saw there is to buy', least, l.row(HOLES.sawStep), 'up');
}
