import type { CutBound, CutPlan, CutSheet, Unplaced } from '../cut-plan.ts';
import type { CutProblem } from '../cut-problem.ts';
import { bulk } from './bulk.ts';
import { obeys } from './by-rules/obeys.ts';
import { completed, hasRules, planByRules, type RuledPlan, unplacedOf } from './by-rules/plan-by-rules.ts';
import { withoutRules } from './by-rules/without-rules.ts';
import { planWorth, worthOf } from './by-rules/worth.ts';
import { drawUp } from './draw-up.ts';
import { sheetsAgain } from './kept-near.ts';
import type { KeptSheet } from './kept-sheet.ts';
import { tally } from './kept-sheet.ts';
import { scaledBound } from './lower-bound.ts';
import { isPlainBars, planBars } from './plan-bars.ts';
import { type ScaledProblem, scaled } from './scaled-problem.ts';
import { searchSheets } from './search-sheets.ts';
import { tidy } from './tidy.ts';

/** How a search is asked for and how it is stopped. */
export interface CutOptions {
  /** Work to do at most, in tree nodes looked at; what takes about a second is `ONE_SECOND`. */
  readonly effort?: number;
  /** Seed of the search's chance. */
  readonly seed?: number;
  /** Whether to spend a little work, when the search is over, on leaving larger offcuts. Absent: yes. */
  readonly tidy?: boolean;
  /** An earlier plan: among plans as good, its cuts are kept where they can be. */
  readonly last?: CutPlan;
  /** Looked at whenever the search pauses: set `requested` and it ends with the best plan so far. */
  readonly stop?: { requested: boolean };
}

/** Where a search stands when it pauses. */
export interface CutProgress {
  readonly work: number;
  readonly cost: number;
  readonly bound: CutBound;
  readonly unplaced: number;
  /** The best plan so far, drawn up when asked for. */
  plan(): CutPlan;
}

/** About a second's work on a machine of 2024. */
export const ONE_SECOND = 60_000_000;
/** Array elements touched in the search for bars that take the time of one tree node. */
const BARS_WORK = 15;
/** Tree nodes looked at in the time of one unit of work under rules. */
const RULES_WORK = 32;

/**
 * Plans the cutting of a problem: straight through-cuts only. Pauses after counted work, gives its progress, and
 * ends when the cost meets the bound, the effort is spent, or `stop` asks for it. Same problem, same options,
 * same plan, unless it was stopped. Pieces that can't be placed are in `unplaced` with the reason.
 */
export function* planCuts(problem: CutProblem, options: CutOptions = {}): Generator<CutProgress, CutPlan> {
  const found = hasRules(problem) ? yield* planRuled(problem, options) : yield* planFree(problem, options);
  return options.last && !found.endedByClock ? nearer(problem, found, options.last) : found;
}

/** Plans a problem of sizes, counts and costs alone. */
function* planFree(problem: CutProblem, options: CutOptions): Generator<CutProgress, CutPlan> {
  const p = scaled(problem);
  const effort = options.effort ?? ONE_SECOND;
  const seed = options.seed ?? 1;
  let bound = scaledBound(p);
  let sheets: readonly KeptSheet[] = [];
  const progress = (work: number, cost: number, unplaced: number): CutProgress => ({
    work,
    cost,
    bound,
    unplaced,
    plan: () => drawnPlan(p, bound, sheets, false),
  });
  if (isPlainBars(p)) {
    let enough = false;
    for (const step of planBars(p, bound, effort * BARS_WORK, seed)) {
      if (!step.best) continue;
      enough = true;
      bound = step.bound;
      sheets = step.best.sheets;
      yield progress(step.work / BARS_WORK, step.best.cost, 0);
      if (options.stop?.requested) break;
    }
    if (enough) return drawnPlan(p, bound, sheets, options.stop?.requested === true);
  }
  const start = bulk(p);
  let stopped = false;
  for (const step of searchSheets(start.rest, bound.cost - start.cost, effort, seed)) {
    sheets = [...start.sheets, ...step.best.sheets];
    yield progress(step.work, start.cost + step.best.cost, step.best.loose);
    if (options.stop?.requested) {
      stopped = true;
      break;
    }
  }
  if (!stopped && !p.flat && options.tidy !== false)
    sheets = tidy(p, sheets, Math.min(effort, ONE_SECOND), seed);
  const plan = drawnPlan(p, bound, sheets, stopped);
  if (problem.objectives === undefined || stopped || options.tidy === false) return plan;
  return yield* byObjectives(problem, plan, effort * REFINE, seed);
}

/** Share of the search's effort that is spent, where the maker says what counts, on what counts after the cost. */
const REFINE = 0.5;

/** Goes on from a plan by the maker's objectives. */
function* byObjectives(
  problem: CutProblem,
  plan: CutPlan,
  effort: number,
  seed: number,
): Generator<CutProgress, CutPlan> {
  if (plan.unplaced.length > 0) return plan;
  const search = planByRules(problem, effort / RULES_WORK, seed, plan.sheets);
  for (;;) {
    const step = search.next();
    const better = ruledPlan(problem, plan.bound, step.done ? step.value : step.value.best, false);
    if (step.done) return better;
    yield {
      work: step.value.work * RULES_WORK,
      cost: better.cost,
      bound: plan.bound,
      unplaced: 0,
      plan: () => better,
    };
  }
}

/** Plans a problem with rules. The bound is that of the problem without them, which can't need more. */
function* planRuled(problem: CutProblem, options: CutOptions): Generator<CutProgress, CutPlan> {
  const free = withoutRules(problem);
  const bound = scaledBound(scaled(free));
  const effort = options.effort ?? ONE_SECOND;
  const seed = options.seed ?? 1;
  const told = (work: number, found: RuledPlan): CutProgress => ({
    work,
    cost: found.sheets.reduce((sum, s) => sum + s.count * problem.stock[s.stock]!.cost, 0),
    bound,
    unplaced: found.left.reduce((a, b) => a + b, 0),
    plan: () => ruledPlan(problem, bound, found, false),
  });
  let search = planByRules(problem, effort / RULES_WORK, seed);
  let step = search.next();
  let found = step.done ? step.value : step.value.best;
  yield told(0, found);
  if (onlyCutsAreRuled(problem)) {
    const plain = planFree(free, { ...options, effort: effort / 2 });
    let next = plain.next();
    while (!next.done) {
      yield told(next.value.work, found);
      next = plain.next();
    }
    const { unplaced, sheets } = next.value;
    if (unplaced.length === 0 && sheets.every((s) => isAllowed(problem, s))) {
      search = planByRules(problem, effort / RULES_WORK, seed, sheets);
      step = search.next();
      found = step.done ? step.value : step.value.best;
    }
  }
  while (!options.stop?.requested && !step.done) {
    step = search.next();
    found = step.done ? step.value : step.value.best;
    if (!step.done) yield told(step.value.work * RULES_WORK, found);
  }
  return ruledPlan(problem, bound, found, !step.done);
}

/** Whether the rules are about cuts alone, so that a plan made without them may keep them by luck. */
function onlyCutsAreRuled(p: CutProblem): boolean {
  return !hasRules({ ...p, rules: {} });
}

function isAllowed(problem: CutProblem, sheet: CutSheet): boolean {
  return obeys(problem, problem.stock.find((s) => s.id === sheet.stock)!, sheet.root);
}

/** By how much a plan may be worse in what counts after the cost before an earlier one's cuts are given up for it. */
const REASON = 0.1;

/** The earlier plan cut again for the sizes of now, unless the new one is better for a reason. */
function nearer(problem: CutProblem, found: CutPlan, last: CutPlan): CutPlan {
  if (found.unplaced.length > 0 || (problem.groups ?? []).length > 0) return found;
  const kept = sheetsAgain(problem, last);
  if (kept.length === 0 || !kept.every((s) => isAllowed(problem, s))) return found;
  const again = ruledPlan(problem, found.bound, completed(problem, kept), false);
  if (again.unplaced.length > 0 || again.cost > found.cost || !again.worth || !found.worth) return found;
  const much = (a: number, b: number) => a - b > Math.max(1, REASON * Math.abs(b));
  const worse =
    again.cost === found.cost &&
    (much(-again.worth.leftover, -found.worth.leftover) ||
      much(again.worth.settings, found.worth.settings) ||
      much(again.worth.cuts, found.worth.cuts));
  return worse ? found : again;
}

function ruledPlan(problem: CutProblem, claimed: CutBound, found: RuledPlan, stopped: boolean): CutPlan {
  const sheets = found.sheets.map((s) => ({
    stock: problem.stock[s.stock]!.id,
    count: s.count,
    root: s.root,
  }));
  const cost = found.sheets.reduce((sum, s) => sum + s.count * problem.stock[s.stock]!.cost, 0);
  const unplaced = unplacedOf(problem, found);
  const kept = unplaced.some((u) => u.why !== 'larger-than-all-stock');
  const bound = kept ? { sheets: 0, cost: 0 } : claimed;
  const proven = unplaced.every((u) => u.why === 'larger-than-all-stock') && cost === bound.cost;
  return {
    sheets,
    cost,
    bound,
    proven,
    endedByClock: stopped && !proven,
    unplaced,
    worth: planWorth(found.sheets),
  };
}

function drawnPlan(
  p: ScaledProblem,
  claimed: CutBound,
  kept: readonly KeptSheet[],
  endedByClock: boolean,
): CutPlan {
  const cost = kept.reduce((sum, k) => sum + k.count * p.stocks[k.stock]!.cost, 0);
  const unplaced = missing(p, kept);
  const short = unplaced.some((u) => u.why === 'stock-used-up');
  const bound = short && claimed.cost > cost ? { sheets: 0, cost: 0 } : claimed;
  const proven = !short && cost === bound.cost;
  const sheets = drawUp(p, kept);
  const worth = planWorth(
    sheets.map((s) => ({ stock: 0, count: s.count, root: s.root, worth: worthOf(p.problem, s.root) })),
  );
  return { sheets, cost, bound, proven, endedByClock: endedByClock && !proven, unplaced, worth };
}

/** What the sheets don't hold, in the order of the pieces. */
function missing(p: ScaledProblem, kept: readonly KeptSheet[]): Unplaced[] {
  const left = Float64Array.from(p.kinds, (k) => k.count);
  for (const k of kept) {
    const counts = new Float64Array(p.kinds.length);
    tally(k.tree, counts);
    counts.forEach((c, i) => {
      left[i]! -= c * k.count;
    });
  }
  const rows: { at: number; row: Unplaced }[] = p.outside.map(({ piece: at, why }) => {
    const piece = p.problem.pieces[at]!;
    return { at, row: { piece: piece.id, count: piece.count, why } };
  });
  left.forEach((count, i) => {
    const at = p.kinds[i]!.piece;
    if (count > 0) rows.push({ at, row: { piece: p.problem.pieces[at]!.id, count, why: 'stock-used-up' } });
  });
  return rows.sort((a, b) => a.at - b.at).map((r) => r.row);
}
