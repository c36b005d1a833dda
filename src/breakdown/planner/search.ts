import { type KeptSheet, keep } from './kept-sheet.ts';
import { RuinRecreate } from './ruin-recreate.ts';
import { divisor, type ScaledProblem } from './scaled-problem.ts';
import { type StockPlan, StockPlans } from './stock-plans.ts';

/** Work between two pauses, in tree nodes looked at. */
const PAUSE = 200_000;
/** Where there are several sizes of sheets: work after which sheets are chosen together, and work on them without any gain. */
const PLANS_AFTER = 4_000_000;
const PATIENCE = 1_500_000;

/** The best found so far: its sheets, their cost, and how many pieces are not on them. */
export interface Found {
  readonly sheets: readonly KeptSheet[];
  readonly cost: number;
  readonly loose: number;
}

/**
 * Searches for cheap sheets that hold all pieces, until the cost is down to `bound` or the effort is spent.
 * First the pieces are laid in several orders; then the goal is always a cost below the best known.
 */
export function* search(
  p: ScaledProblem,
  bound: number,
  effort: number,
  seed: number,
): Generator<{ work: number; best: Found }> {
  let best: Found = { sheets: [], cost: 0, loose: 0 };
  const some = p.kinds.some((k) => k.count > 0) && p.stocks.some((s) => s.count > 0);
  if (!some) {
    yield { work: 0, best };
    return;
  }
  const r = new RuinRecreate(p, seed);
  let step = 0;
  for (const s of p.stocks) step = divisor(step, s.cost);
  let looseArea = Number.POSITIVE_INFINITY;
  const better = () => {
    const loose = r.measure();
    return loose < looseArea || (loose === looseArea && r.cost < best.cost);
  };
  const take = () => {
    looseArea = r.measure();
    best = taken(r);
  };
  for (let key = 1; key < 5; key++) {
    r.clear();
    r.fill(key, Number.POSITIVE_INFINITY);
    if (better()) take();
  }
  yield { work: r.work, best };

  let paused = r.work;
  let goal = 0;
  const sizes = p.stocks.map((s) => ({
    cost: s.cost,
    area: s.length * s.width,
    count: Math.min(s.count, r.n),
  }));
  const plans = new StockPlans(sizes, r.area, r.chance);
  let plan: StockPlan | undefined;
  let [least, gained] = [0, 0];
  const together = () => p.stocks.length > 1 && looseArea === 0 && r.work > PLANS_AFTER;
  const aim = () => {
    goal = looseArea > 0 ? Number.POSITIVE_INFINITY : best.cost - Math.max(step, 1);
    plan = together() ? plans.next(goal) : undefined;
    if (together()) r.allow(plan?.counts ?? Int32Array.from(sizes, (s) => s.count));
    while (r.cost > goal) r.drop(worst(r, p));
    r.fill(1, goal);
    r.begin();
    [least, gained] = [r.looseWeight, r.work];
  };
  if (looseArea > 0 || best.cost > bound) aim();
  while (r.work < effort && (looseArea > 0 || best.cost > bound)) {
    const done = r.improve(goal);
    if (done || (looseArea > 0 && r.looseWeight < looseArea)) {
      take();
      if (done) {
        if (plan) plans.note(plan, 0);
        if (best.cost <= bound) break;
        aim();
      }
    }
    if (r.looseWeight < least) [least, gained] = [r.looseWeight, r.work];
    if (together() && r.work - gained > PATIENCE) {
      if (plan) plans.note(plan, least);
      aim();
    }
    if (r.work - paused >= PAUSE) {
      paused = r.work;
      yield { work: r.work, best };
    }
  }
  yield { work: r.work, best };
}

/** The open sheet that is used least for what it costs. */
function worst(r: RuinRecreate, p: ScaledProblem): number {
  let at = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let s = 0; s < r.slots; s++) {
    const b = r.block[s]!;
    if (b < 0) continue;
    const use = r.trees.used[b]! / Math.max(p.stocks[r.stock[s]!]!.cost, 1e-9);
    if (use < least) {
      least = use;
      at = s;
    }
  }
  return at;
}

function taken(r: RuinRecreate): Found {
  const sheets: KeptSheet[] = [];
  for (let s = 0; s < r.slots; s++) {
    const b = r.block[s]!;
    if (b >= 0)
      sheets.push({ stock: r.stock[s]!, tree: keep(r.trees, r.trees.top[b]!, r.pieceKind), count: 1 });
  }
  return { sheets, cost: r.cost, loose: r.looseCount };
}
