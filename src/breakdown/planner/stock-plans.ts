import type { Chance } from '../../measure/index.ts';

/** Draws from which a plan is chosen, and plans that are remembered. */
const DRAWS = 40;
const MOST_PLANS = 400;
/** Share of the pieces' area that stays loose beyond what the sheets lack, until it is known better. */
const USUAL_LOSS = 0.05;
/** How much each further attempt speaks against a plan. */
const TIRED = 0.2;

interface Stock {
  readonly cost: number;
  readonly area: number;
  readonly count: number;
}

/** So many sheets of each stock. */
export interface StockPlan {
  readonly counts: Int32Array;
  readonly cost: number;
  readonly area: number;
  attempts: number;
  /** The least area that stayed loose on these sheets. */
  loose: number;
}

/**
 * Which sheets to try next, where they are of several sizes: sheets whose areas together are large enough, at a cost that
 * is allowed. Taken first is the cheapest plan that should hold all, by what stayed loose on others; else the one that
 * should leave the least. With sheets opened by chance a search is soon caught on some that are too small together.
 */
export class StockPlans {
  private readonly stocks: readonly Stock[];
  private readonly area: number;
  private readonly chance: Chance;
  private readonly plans = new Map<string, StockPlan>();
  /** Area lost to cutting on sheets that held all, or would have with that much more, as shares of the pieces’ area. */
  private loss = USUAL_LOSS;

  constructor(stocks: readonly Stock[], area: number, chance: Chance) {
    this.stocks = stocks;
    this.area = area;
    this.chance = chance;
  }

  /** The plan to try at no more than `goal`; undefined when none is large enough. */
  next(goal: number): StockPlan | undefined {
    for (const [key, plan] of this.plans) if (plan.cost > goal) this.plans.delete(key);
    if (this.plans.size < MOST_PLANS) for (let i = 0; i < DRAWS; i++) this.draw(goal);
    let best: StockPlan | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const plan of this.plans.values()) {
      const expected = this.expected(plan);
      // Of those that should do, the cheapest.
      const score = expected > 0 ? expected : plan.cost / goal - 2;
      if (score < least) {
        least = score;
        best = plan;
      }
    }
    if (best) best.attempts++;
    return best;
  }

  /** Notes what stayed loose on a plan's sheets. */
  note(plan: StockPlan, loose: number): void {
    plan.loose = Math.min(plan.loose, loose);
    const lost = Math.max(0, loose + plan.area - this.area) / this.area;
    // Slowly upward, at once downward: a plan that held all shows that so little loss can be reached.
    this.loss = loose === 0 && lost < this.loss ? lost : this.loss + 0.1 * (lost - this.loss);
  }

  private expected(plan: StockPlan): number {
    const left =
      plan.attempts === 0 ? this.loss * this.area - (plan.area - this.area) : plan.loose + 0.002 * this.area;
    return (left / this.area) * (left > 0 ? 1 + TIRED * plan.attempts : 1);
  }

  /** Sheets by chance until no more may be had. */
  private draw(goal: number): void {
    const counts = new Int32Array(this.stocks.length);
    let [cost, area] = [0, 0];
    for (;;) {
      let pick = -1;
      let seen = 0;
      for (let j = 0; j < counts.length; j++) {
        const s = this.stocks[j]!;
        if (counts[j]! < s.count && cost + s.cost <= goal && this.chance.below(++seen) === 0) pick = j;
      }
      if (pick < 0) break;
      counts[pick]!++;
      cost += this.stocks[pick]!.cost;
      area += this.stocks[pick]!.area;
    }
    const key = counts.join();
    if (area < this.area || this.plans.has(key)) return;
    this.plans.set(key, { counts, cost, area, attempts: 0, loose: Number.POSITIVE_INFINITY });
  }
}
