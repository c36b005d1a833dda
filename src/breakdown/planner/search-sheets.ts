import { Chance } from '../../measure/index.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import { type Found, search } from './search.ts';
import { SheetDive } from './sheet-dive.ts';

/**
 * Searches for cheap sheets that hold all pieces, until the cost is down to `bound` or the effort is spent; where many pieces
 * are of few kinds, dives into the relaxation over whole sheets have as much work as ruin and recreate.
 */
export function* searchSheets(
  p: ScaledProblem,
  bound: number,
  effort: number,
  seed: number,
): Generator<{ work: number; best: Found }> {
  if (!SheetDive.suits(p)) {
    yield* search(p, bound, effort, seed);
    return;
  }
  const { cost, count } = p.stocks[0]!;
  const main = search(p, bound, effort, seed);
  let best: Found = { sheets: [], cost: Number.POSITIVE_INFINITY, loose: Number.POSITIVE_INFINITY };
  const sheetsOf = (found: Found) => (found.loose > 0 ? count + 1 : Math.round(found.cost / cost));
  const dive = new SheetDive(p, new Chance(seed));
  const dives = dive.run(Math.ceil(bound / cost - 1e-9), () => sheetsOf(best));
  const isLess = (a: Found) => a.loose < best.loose || (a.loose === best.loose && a.cost < best.cost);
  let [searched, searching, diving] = [0, true, cost > 0];
  while (searching || diving) {
    if (searching && (!diving || searched <= dive.work)) {
      const next = main.next();
      if (next.done) searching = false;
      else {
        searched = next.value.work;
        if (isLess(next.value.best)) best = next.value.best;
      }
    } else {
      const next = dives.next();
      if (next.done) diving = false;
      else if (next.value) {
        const sheets = next.value.reduce((a, s) => a + s.count, 0);
        const found = { sheets: next.value, cost: sheets * cost, loose: 0 };
        if (sheets <= count && isLess(found)) best = found;
      }
    }
    yield { work: searched + dive.work, best };
    if ((best.loose === 0 && best.cost <= bound) || searched + dive.work >= effort) return;
  }
}
