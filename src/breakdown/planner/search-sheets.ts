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
  const main = search(p, bound, effort, seed);
  // A first plan before all else.
  const first = main.next();
  if (first.done) return;
  let best = first.value.best;
  yield first.value;
  const dive = best.loose === 0 && best.cost <= bound ? undefined : SheetDive.of(p, new Chance(seed));
  if (!dive) {
    yield* main;
    return;
  }
  const { cost, count } = p.stocks[0]!;
  const sheetsOf = (found: Found) => (found.loose > 0 ? count + 1 : Math.round(found.cost / cost));
  const dives = dive.run(Math.ceil(bound / cost - 1e-9), () => sheetsOf(best));
  const isLess = (a: Found) => a.loose < best.loose || (a.loose === best.loose && a.cost < best.cost);
  let [searched, searching, diving] = [first.value.work, true, true];
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
        const found = { sheets: next.value, cost: next.value.length * cost, loose: 0 };
        if (next.value.length <= count && isLess(found)) best = found;
      }
    }
    yield { work: searched + dive.work, best };
    if ((best.loose === 0 && best.cost <= bound) || searched + dive.work >= effort) return;
  }
}
