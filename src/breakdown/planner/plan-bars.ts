import type { CutBound } from '../cut-plan.ts';
import type { BarsFound } from './bars-found.ts';
import type { KeptNode, KeptSheet } from './kept-sheet.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import type { Found } from './search.ts';
import { searchBars, WORTH } from './search-bars.ts';
import { ALONG, LEAF } from './sheet-trees.ts';

/** Above this many pieces or kinds the search for sheets takes bars as well. */
const MOST_PIECES = 20_000;
const MOST_KINDS = 600;
/** A proof that takes a judge more steps than this is not handed over, and its bound not claimed. */
const MOST_CHECKS = 5e7;

/** Whether a problem is of bars of one length, so that the search for bars can take it. */
export function isPlainBars(p: ScaledProblem): boolean {
  const pieces = p.kinds.reduce((a, k) => a + k.count, 0);
  return p.flat && p.stocks.length === 1 && pieces <= MOST_PIECES && p.kinds.length <= MOST_KINDS;
}

/** Searches for the fewest bars of one length; `undefined` bars in the end when there are too few in stock. */
export function* planBars(
  p: ScaledProblem,
  claimed: CutBound,
  effort: number,
  seed: number,
): Generator<{ work: number; best: Found | undefined; bound: CutBound }> {
  const stock = p.stocks[0]!;
  const order = [...p.kinds.keys()].sort((a, b) => p.kinds[b]!.length - p.kinds[a]!.length || a - b);
  const lengths = Int32Array.from(order, (i) => p.kinds[i]!.length);
  const demand = Int32Array.from(order, (i) => p.kinds[i]!.count);
  let checks = 0;
  for (const k of p.kinds) checks += Math.min(k.count, Math.floor(stock.length / k.length)) * stock.length;
  for (const step of searchBars(lengths, demand, stock.length, claimed.sheets, effort, seed)) {
    const values = checks <= MOST_CHECKS ? step.values : undefined;
    const bound: CutBound = values
      ? {
          sheets: step.bound,
          cost: step.bound * stock.cost,
          proof: {
            kind: 'values',
            values: order.map((i, at) => ({
              piece: p.problem.pieces[p.kinds[i]!.piece]!.id,
              value: values[at]!,
            })),
            most: WORTH,
          },
        }
      : claimed;
    const best = step.best.total <= stock.count ? found(p, step.best, order) : undefined;
    yield { work: step.work, best, bound };
  }
}

function found(p: ScaledProblem, bars: BarsFound, order: readonly number[]): Found {
  const sheets = bars.bars.map(({ counts, times }): KeptSheet => {
    const parts: KeptNode[] = [];
    counts.forEach((c, at) => {
      const kind = order[at]!;
      const length = p.kinds[kind]!.length;
      for (let i = 0; i < c; i++)
        parts.push({ side: LEAF, parts: [], kind, turned: false, length, width: 1 });
    });
    const length = parts.reduce((a, n) => a + n.length, 0);
    const tree = parts.length === 1 ? parts[0]! : { ...parts[0]!, side: ALONG, parts, kind: -1, length };
    return { stock: 0, tree, count: times };
  });
  return { sheets, cost: bars.total * p.stocks[0]!.cost, loose: 0 };
}
