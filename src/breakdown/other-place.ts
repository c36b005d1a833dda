import type { Ledger, Traced } from '../measure/index.ts';
import type { CutNode } from './cut-plan.ts';
import type { LotProblem, StockSource } from './lot-problem.ts';

/**
 * Where a cut comes that does not end its contents, in the sheet's coordinates: beside or behind a flaw, or, roughly cut at
 * the yard, so that what comes off or what stays is as large as the vehicle takes. Undefined where nothing tells its place.
 */
export function otherPlace(
  l: Ledger,
  lot: LotProblem,
  source: StockSource,
  node: CutNode & { readonly kind: 'cut' },
  start: () => Traced,
): Traced | undefined {
  return [...besideFlaws(l, lot, source, node), ...asFarAsItTravels(l, lot, source, node, start)].find(
    (t) => l.ticks(t) === node.at,
  );
}

type Cut = CutNode & { readonly kind: 'cut' };

function* besideFlaws(l: Ledger, lot: LotProblem, source: StockSource, node: Cut): Generator<Traced> {
  for (const f of source.flaws) {
    const [from, size] = node.across === 'length' ? [f.x, f.length] : [f.y, f.width];
    const beyond = lot.beyondFlaws === undefined ? [] : [lot.beyondFlaws];
    const end = [from, size, ...beyond].reduce((sum, t) => sum + l.ticks(t), 0);
    // Only what is met is written down: the ledger keeps every number that is worked out.
    const behind = () => l.sum('where the flaw ends', from, size, ...beyond);
    if (end === node.at) yield behind();
    if (end - l.ticks(lot.kerf) === node.at)
      yield l.less('so that the kerf takes the last of the flaw', behind(), lot.kerf);
  }
}

function* asFarAsItTravels(
  l: Ledger,
  lot: LotProblem,
  source: StockSource,
  node: Cut,
  start: () => Traced,
): Generator<Traced> {
  if (!lot.yard || !node.yard) return;
  const { over, room } = lot.yard;
  const lengthwise = node.across === 'length';
  const whole = lengthwise ? source.length : source.width;
  for (const most of room) {
    // As much as travels, counted from the sheet's own edge or from another rough cut.
    const from = lengthwise ? node.x : node.y;
    if (from <= l.ticks(source.trim) && l.ticks(most) - l.ticks(over) === node.at)
      yield l.less('as much as travels, less what a rough cut stays away', most, over);
    if (from + l.ticks(most) - 2 * l.ticks(over) === node.at)
      yield l.less(
        'as much as travels, less what rough cuts stay away',
        l.sum('from here', start(), most),
        over,
        over,
      );
    const end = lengthwise ? node.x + node.length : node.y + node.width;
    if (
      end >= l.ticks(whole) - l.ticks(source.trim) &&
      l.ticks(whole) - l.ticks(most) - l.ticks(lot.kerf) - l.ticks(over) === node.at
    )
      yield l.less('so that what stays travels', whole, most, lot.kerf, over);
  }
}
