import type { Chance } from '../../measure/index.ts';
import { FillSheet, joined, rowsOf } from './fill-sheet.ts';
import { type KeptNode, type KeptSheet, tally } from './kept-sheet.ts';
import { PatternMaster } from './pattern-master.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import { search } from './search.ts';
import { LEAF } from './sheet-trees.ts';

/** Only where pieces are asked for so often on average: else no sheet is cut twice. */
const OFTEN = 3;
const MOST_KINDS = 60;
/** The relaxation is given up after so many pivots. */
const MOST_PIVOTS = 3000;
/** Steps of fillings between two pauses, pivots then at most, and pivots of the relaxation after a step. */
const PAUSE = 2e6;
const MOST_AT_ONCE = 20;
const PIVOTS_AGAIN = 400;
/** Patterns tried at each step of a dive before it ends. */
const MOST_TRIES = 4;
/** How much chance has to say in the order of patterns, from dive to dive. */
const NOISE = [0, 0.2, 0.4, 0.6];
/** Tree nodes looked at to lay what a dive leaves over. */
const LAST = 400_000;
/** Array elements touched by the relaxation in the time of one tree node. */
const ELEMENTS = 15;

/**
 * Cuts many pieces of few kinds from sheets of one size: dives into the relaxation over whole sheets as they may be cut (P.
 * Gilmore and R. Gomory, Operations Research 13, 1965), settling sheet by sheet while it says that the target can be
 * met; the last sheets are laid by the usual search.
 */
export class SheetDive {
  private readonly p: ScaledProblem;
  private readonly fill: FillSheet;
  private readonly master: PatternMaster;
  private readonly dive: PatternMaster;
  private readonly before: PatternMaster;
  private readonly chance: Chance;
  /** Pivots between two pauses. */
  private readonly atOnce: number;
  private searched = 0;

  private constructor(p: ScaledProblem, fill: FillSheet, chance: Chance) {
    this.p = p;
    this.fill = fill;
    this.chance = chance;
    const stock = p.stocks[0]!;
    const lengths = Int32Array.from(p.kinds, (k) => k.length);
    const demand = Int32Array.from(p.kinds, (k) => k.count);
    const first = (kind: number) => {
      const rows = rowsOf(kind, p.kinds[kind]!, stock);
      fill.keep(kind, rows);
      const counts = new Int32Array(p.kinds.length);
      tally(rows, counts);
      return counts[kind]!;
    };
    const master = () => new PatternMaster(lengths, demand, stock.length, { fill, first });
    [this.master, this.dive, this.before] = [master(), master(), master()];
    this.atOnce = Math.max(1, Math.min(MOST_AT_ONCE, Math.round(PAUSE / fill.steps)));
  }

  /** One for a problem of many pieces of few kinds, on sheets of one size that have a price and can be filled exactly. */
  static of(p: ScaledProblem, chance: Chance): SheetDive | undefined {
    const pieces = p.kinds.reduce((a, k) => a + k.count, 0);
    const few = p.kinds.length > 0 && p.kinds.length <= MOST_KINDS && pieces >= OFTEN * p.kinds.length;
    if (p.flat || p.stocks.length !== 1 || !few || p.stocks[0]!.cost <= 0) return undefined;
    const fill = new FillSheet(p.kinds, p.stocks[0]!);
    return fill.able ? new SheetDive(p, fill, chance) : undefined;
  }

  /** In tree nodes looked at. */
  get work(): number {
    return (this.master.work + this.dive.work) / ELEMENTS + this.searched;
  }

  /**
   * Dives again and again for as few sheets as the relaxation lets hope for, at least `least`, and by turns for one less than
   * `best` says; gives the sheets whenever they are fewer than that. Ends when nothing more is to be hoped for.
   */
  *run(least: number, best: () => number): Generator<readonly KeptSheet[] | undefined> {
    const { master } = this;
    for (let pivots = 0; !master.finished; pivots += this.atOnce) {
      if (pivots > MOST_PIVOTS) return;
      master.solve(0, this.atOnce, true);
      yield undefined;
    }
    this.dive.patterns.copyFrom(master.patterns);
    const hoped = Math.max(least, Math.ceil(master.objective - 1e-6));
    for (let dives = 0; best() > hoped; dives++) {
      const target = dives % 2 === 0 ? hoped : best() - 1;
      const found = yield* this.once(target, NOISE[(dives >> 1) % NOISE.length]!);
      if (found) yield found;
    }
  }

  private *once(target: number, noise: number): Generator<undefined, readonly KeptSheet[] | undefined> {
    const { dive, before } = this;
    const settled: KeptNode[] = [];
    dive.restore(this.master);
    for (;;) {
      this.settleWhole(settled);
      if (dive.empty) return sheetsOf(settled);
      before.restore(dive);
      const depth = settled.length;
      const picks = this.picks(noise);
      let more = false;
      for (let t = 0; t < Math.min(MOST_TRIES, picks.length) && !more; t++) {
        this.settle(picks[t]!, settled);
        dive.refresh();
        const left = target - settled.length;
        more = dive.repair();
        if (more && !dive.empty) {
          dive.finished = false;
          for (let pivots = 0; pivots < PIVOTS_AGAIN && !dive.finished; pivots += this.atOnce) {
            dive.solve(left, this.atOnce);
            if (dive.objective <= left + 1e-6) break;
            yield undefined;
          }
          more = dive.objective <= left + 1e-6;
        }
        if (!more) {
          dive.restore(before);
          settled.length = depth;
        }
      }
      yield undefined;
      if (more) continue;
      const rest = this.last(target - settled.length);
      yield undefined;
      return rest && [...sheetsOf(settled), ...rest];
    }
  }

  /** The patterns the relaxation takes, the greatest parts first, with some chance. */
  private picks(noise: number): readonly number[] {
    const { dive } = this;
    const parts: { pattern: number; part: number }[] = [];
    for (let r = 0; r < dive.m; r++)
      if (dive.basis[r]! >= 0 && dive.x[r]! > 1e-6)
        parts.push({ pattern: dive.basis[r]!, part: dive.x[r]! + noise * this.chance.share() });
    return parts.sort((a, b) => b.part - a.part || a.pattern - b.pattern).map((p) => p.pattern);
  }

  /** Settles the whole parts of the relaxation, which costs nothing. */
  private settleWhole(settled: KeptNode[]): void {
    const { dive } = this;
    const whole: number[] = [];
    for (let r = 0; r < dive.m; r++)
      if (dive.basis[r]! >= 0)
        for (let c = Math.floor(dive.x[r]! + 1e-6); c > 0; c--) whole.push(dive.basis[r]!);
    for (const pattern of whole) this.settle(pattern, settled);
    if (whole.length > 0) dive.refresh();
  }

  /** Cuts a pattern once, without the pieces that are asked for no more. */
  private settle(pattern: number, settled: KeptNode[]): void {
    const tree = pruned(this.fill.trees[pattern]!, this.dive.demand);
    if (tree) settled.push(tree);
  }

  /** Lays what is still open on so many sheets, if the usual search finds how. */
  private last(sheets: number): readonly KeptSheet[] | undefined {
    const stock = this.p.stocks[0]!;
    const rest: ScaledProblem = {
      ...this.p,
      kinds: this.p.kinds.map((k, i) => ({ ...k, count: this.dive.demand[i]! })),
      stocks: [{ ...stock, count: sheets }],
    };
    if (sheets <= 0) return undefined;
    let found: readonly KeptSheet[] | undefined;
    let work = 0;
    for (const step of search(rest, sheets * stock.cost, LAST, this.chance.below(1_000_000))) {
      work = step.work;
      if (step.best.loose === 0) found = step.best.sheets;
    }
    this.searched += work;
    return found;
  }
}

/** A tree without the pieces that there are no more of in `open`, which are counted down. */
function pruned(tree: KeptNode, open: Int32Array): KeptNode | undefined {
  if (tree.side !== LEAF)
    return joined(
      tree.parts.map((part) => pruned(part, open)).filter((part) => part !== undefined),
      tree.side,
    );
  if (open[tree.kind] === 0) return undefined;
  open[tree.kind]!--;
  return tree;
}

function sheetsOf(trees: readonly KeptNode[]): readonly KeptSheet[] {
  return trees.map((tree) => ({ stock: 0, tree, count: 1 }));
}
