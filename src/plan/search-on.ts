import { type Breakdown, breakDown } from '../breakdown/index.ts';
import type { Plan } from './plan.ts';

/** Where the search for better cutting stands. */
export interface CuttingProgress {
  /** The lot that is being worked at. */
  readonly lot: string;
  /** From 0 to 1 of all that is going to be tried. */
  readonly share: number;
}

/** How much more work each round spends than the first plan did: the longer the search, the rarer the finds. */
const ROUNDS = [30_000_000, 120_000_000, 480_000_000];

/**
 * Looks on for a better way to cut up the stock of a plan, in rounds that each work longer. Yields its progress, and after
 * a round that found one, the better breakdown; ends when all of it is proven, the rounds are over, or `stop` asks for it.
 */
export function* searchOn(
  plan: Pick<Plan, 'job' | 'setOut' | 'breakdown'>,
  stop?: { requested: boolean },
): Generator<CuttingProgress | { readonly better: Breakdown }, void> {
  let best = plan.breakdown;
  const lots = Math.max(1, best.lots.length);
  for (const [round, effort] of ROUNDS.entries()) {
    if (isProven(best) || stop?.requested) return;
    const cutting = breakDown(plan.job, plan.setOut, { effort, last: best, ...(stop ? { stop } : {}) });
    let step = cutting.next();
    const done = new Set<string>();
    while (!step.done) {
      const { lot, share } = step.value;
      done.add(lot);
      yield { lot, share: (round + (done.size - 1 + share) / lots) / ROUNDS.length };
      step = cutting.next();
    }
    if (!costsLess(step.value, best)) continue;
    best = step.value;
    yield { better: best };
  }
}

function isProven(b: Breakdown): boolean {
  return b.missing.length === 0 && b.lots.every((l) => l.plan.proven);
}

/** Fewer parts without stock, or, with as many, less cost. */
function costsLess(a: Breakdown, b: Breakdown): boolean {
  const cost = (x: Breakdown) => x.lots.reduce((sum, l) => sum + l.plan.cost, 0);
  return a.missing.length < b.missing.length || (a.missing.length === b.missing.length && cost(a) < cost(b));
}
