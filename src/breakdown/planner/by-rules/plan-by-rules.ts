import { Chance } from '../../../measure/index.ts';
import type { CutNode, CutSheet, Unplaced } from '../../cut-plan.ts';
import type { CutProblem } from '../../cut-problem.ts';
import { type CutUnit, facesDo, lies, unitsOf } from './cut-unit.ts';
import { Filling, type Manner } from './filling.ts';
import { compare, ranking, type WorthySheet, worthOf } from './worth.ts';

/** Sheets under the rules, and what has no place on them. */
export interface RuledPlan {
  readonly sheets: readonly WorthySheet[];
  /** Of each unit, how many have no place. */
  readonly left: readonly number[];
}

/** Above this many pieces a sheet is cut as often as the demand allows, and nothing is moved afterwards. */
const MANY = 2000;
const HISTORY = 40;
const MOST_POOLED = 3;
/** Fillings that are tried for a sheet before it is given up. */
const PATIENCE = 12;

/** Whether a problem says more than sizes, counts and costs, so that the search of plain trees can't take it. */
export function hasRules(p: CutProblem): boolean {
  return (
    Object.keys(p.rules ?? {}).length > 0 ||
    (p.groups ?? []).length > 0 ||
    p.stock.some(
      (s) => (s.flaws?.length ?? 0) > 0 || s.grain === 'across' || s.grain === 'free' || (s.faces ?? 2) < 2,
    ) ||
    p.pieces.some((q) => q.across || q.allowance)
  );
}

/**
 * Plans under rules: sheets are filled from the top down in several orders; then a few sheets at a time are taken apart
 * and filled again in other orders, and kept by late acceptance. Plans are compared number by number in the order of
 * the maker's objectives. `from` is a plan to begin with.
 */
export function* planByRules(
  problem: CutProblem,
  effort: number,
  seed: number,
  from?: readonly CutSheet[],
): Generator<{ readonly work: number; readonly best: RuledPlan }, RuledPlan> {
  const search = new RuledSearch(problem, seed);
  let best: RuledPlan = { sheets: [], left: [] };
  for (const plan of from ? [search.begin(from)] : search.first()) {
    best = plan;
    yield { work: search.work, best };
  }
  let paused = search.work;
  while (search.work < effort && search.mayImprove) {
    best = search.step();
    if (search.work - paused < 100_000) continue;
    paused = search.work;
    yield { work: search.work, best };
  }
  return best;
}

/** Sheets that stay as they are, and as many more as what isn't on them needs. */
export function completed(problem: CutProblem, sheets: readonly CutSheet[]): RuledPlan {
  return new RuledSearch(problem, 1).complete(sheets);
}

/** Pieces without a place, in the order of the problem, each with a reason that is true. */
export function unplacedOf(problem: CutProblem, plan: RuledPlan): readonly Unplaced[] {
  const units = unitsOf(problem);
  const used = new Map<string, number>();
  for (const s of plan.sheets) {
    const { id } = problem.stock[s.stock]!;
    used.set(id, (used.get(id) ?? 0) + s.count);
  }
  const missing = new Map<string, number>();
  units.forEach((u, i) => {
    if (plan.left[i]! > 0)
      for (const p of u.pieces) missing.set(p.id, (missing.get(p.id) ?? 0) + plan.left[i]!);
  });
  return problem.pieces.flatMap((p): Unplaced[] => {
    const count = missing.get(p.id);
    if (count === undefined) return [];
    const fits = problem.stock.filter((s) => lies(p, s, false) || lies(p, s, true));
    const homes = fits.filter((s) => facesDo(p, s));
    const spare = homes.some((s) => s.count === undefined || (used.get(s.id) ?? 0) < s.count);
    const why =
      fits.length === 0 ? 'larger-than-all-stock' : homes.length === 0 || spare ? 'rules' : 'stock-used-up';
    return [{ piece: p.id, count, why }];
  });
}

class RuledSearch {
  work = 0;
  mayImprove: boolean;
  private readonly problem: CutProblem;
  private readonly units: readonly CutUnit[];
  private readonly chance: Chance;
  private now: RuledPlan = { sheets: [], left: [] };
  private nowRank: readonly number[] = [];
  private best: RuledPlan = this.now;
  private bestRank: readonly number[] = [];
  private readonly late: (readonly number[])[] = [];
  private lateAt = 0;

  constructor(problem: CutProblem, seed: number) {
    this.problem = problem;
    this.units = unitsOf(problem);
    this.chance = new Chance(seed);
    this.mayImprove = this.units.length > 0 && this.units.reduce((n, u) => n + u.count, 0) <= MANY;
  }

  /** Plans in usual orders, one after the other, each time the best so far. */
  *first(): Generator<RuledPlan> {
    const keys: ((u: CutUnit) => number)[] = [
      (u) => -u.area,
      (u) => -Math.max(...u.ways.map((w) => w.width), 0),
      (u) => -Math.max(...u.ways.map((w) => w.length), 0),
    ];
    const empty: RuledPlan = { sheets: [], left: this.units.map((u) => u.count) };
    this.settle(empty);
    for (const key of this.mayImprove ? keys : keys.slice(0, 1)) {
      const order = this.byKey(key);
      for (const lengthFirst of this.mayImprove ? [0, 1] : [0]) {
        const plan = this.refill([], empty.left, { order, best: 0, two: 0, lengthFirst, leave: 0 });
        if (compare(this.rank(plan), this.bestRank) < 0) this.settle(plan);
        yield this.best;
      }
    }
  }

  /** Begins with sheets that were found otherwise. */
  begin(sheets: readonly CutSheet[]): RuledPlan {
    const left = this.units.map((u) => u.count);
    const at = new Map(this.units.map((u, i) => [u.pieces[0]!.id, i]));
    const worthy = sheets.flatMap((s): WorthySheet[] => {
      const stock = this.problem.stock.findIndex((t) => t.id === s.stock);
      for (const id of piecesOn(s.root)) left[at.get(id)!]! -= s.count;
      // Equal sheets are taken one by one, so that one of them may change.
      return Array.from({ length: s.count }, () => ({
        stock,
        count: 1,
        root: s.root,
        worth: worthOf(this.problem, s.root),
      }));
    });
    this.settle({ sheets: worthy, left });
    return this.best;
  }

  /** Begins with sheets that were found otherwise, and lays what is not on them. */
  complete(sheets: readonly CutSheet[]): RuledPlan {
    const { sheets: kept, left } = this.begin(sheets);
    const order = this.byKey((u) => -u.area);
    return this.refill(kept, left, { order, best: 0, two: 0, lengthFirst: 0, leave: 0 });
  }

  /** Some sheets are filled anew. */
  step(): RuledPlan {
    const { sheets } = this.now;
    const many = Math.min(sheets.length, 1 + this.chance.below(MOST_POOLED));
    const out = new Set<number>();
    while (out.size < many) out.add(this.chance.below(sheets.length));
    const kept = sheets.filter((_, i) => !out.has(i));
    const left = [...this.now.left];
    sheets.forEach((s, i) => {
      if (out.has(i)) for (const u of this.unitsOn(s.root)) left[u]! += s.count;
    });
    const key = this.chance.below(4);
    const order = this.byKey((u) =>
      key === 0
        ? this.chance.share()
        : key === 1
          ? -u.area * (0.7 + 0.6 * this.chance.share())
          : key === 2
            ? -(u.ways[0]?.length ?? 0) * (0.8 + 0.4 * this.chance.share())
            : -(u.ways[0]?.width ?? 0) * (0.8 + 0.4 * this.chance.share()),
    );
    const best = this.chance.below(3) * 0.5;
    const two = this.chance.below(3) * 0.15;
    const lengthFirst = this.chance.share();
    const leave = this.chance.below(3) === 0 ? 0.2 : 0;
    const plan = this.refill(kept, left, { order, best, two, lengthFirst, leave });
    const rank = this.rank(plan);
    const late = this.late[this.lateAt] ?? this.nowRank;
    if (compare(rank, this.nowRank) <= 0 || compare(rank, late) <= 0) {
      this.now = plan;
      this.nowRank = rank;
      if (compare(rank, this.bestRank) < 0) {
        this.best = plan;
        this.bestRank = rank;
      }
    }
    this.late[this.lateAt] = this.nowRank;
    this.lateAt = (this.lateAt + 1) % HISTORY;
    this.work += 50;
    return this.best;
  }

  private settle(plan: RuledPlan): void {
    this.now = plan;
    this.best = plan;
    this.nowRank = this.rank(plan);
    this.bestRank = this.nowRank;
  }

  private rank(plan: RuledPlan): readonly number[] {
    const loose = plan.left.reduce((sum, n, i) => sum + n * this.units[i]!.area, 0);
    return ranking(this.problem, plan.sheets, loose);
  }

  private byKey(key: (u: CutUnit) => number): readonly number[] {
    const keys = this.units.map(key);
    return this.units.map((_, i) => i).sort((a, b) => keys[a]! - keys[b]! || a - b);
  }

  private anyManner(): Manner {
    const order = this.byKey(() => this.chance.share());
    return { order, best: 0.5, two: 0.2, lengthFirst: this.chance.share(), leave: 0 };
  }

  /** Adds sheets until nothing more finds a place. */
  private refill(kept: readonly WorthySheet[], left: readonly number[], manner: Manner): RuledPlan {
    const { stock } = this.problem;
    const filling = new Filling(this.problem, this.units, this.chance);
    left.forEach((n, i) => {
      filling.left[i] = n;
    });
    const there = stock.map((s) => s.count ?? Number.POSITIVE_INFINITY);
    for (const s of kept) there[s.stock]! -= s.count;
    const sheets = [...kept];
    const refused = new Set<number>();
    for (;;) {
      const pick = this.stockFor(filling.left, there, refused);
      if (pick === undefined) break;
      let made: ReturnType<Filling['fill']>;
      for (let t = 0; t < PATIENCE && !made; t++)
        made = filling.fill(pick, t === 0 ? manner : this.anyManner());
      if (!made) {
        refused.add(pick);
        continue;
      }
      let times = 1;
      if (!this.mayImprove) {
        const used = new Map<number, number>();
        for (const u of made.units) used.set(u, (used.get(u) ?? 0) + 1);
        times = there[pick]!;
        for (const [u, n] of used) times = Math.min(times, 1 + Math.floor(filling.left[u]! / n));
        for (const [u, n] of used) filling.left[u]! -= n * (times - 1);
      }
      there[pick]! -= times;
      sheets.push({ stock: pick, count: times, root: made.root, worth: worthOf(this.problem, made.root) });
    }
    this.work += filling.work;
    return { sheets, left: [...filling.left] };
  }

  /** A stock for the next sheet: the cheapest for its size, or as chance has it. */
  private stockFor(
    left: readonly number[],
    there: readonly number[],
    refused: ReadonlySet<number>,
  ): number | undefined {
    const open = this.problem.stock.flatMap((s, i) =>
      there[i]! > 0 &&
      !refused.has(i) &&
      this.units.some((u, k) => left[k]! > 0 && u.ways.some((w) => w.stocks.has(i)))
        ? [{ i, price: s.cost / (s.length * (s.width ?? 1)) }]
        : [],
    );
    this.work += this.units.length;
    if (open.length === 0) return undefined;
    if (this.chance.below(2) === 0) return open[this.chance.below(open.length)]!.i;
    return open.reduce((a, b) => (b.price < a.price ? b : a)).i;
  }

  /** The units on a sheet: groups by their name, other pieces by theirs. */
  private unitsOn(root: CutNode): readonly number[] {
    const found: number[] = [];
    const group = new Map(this.units.flatMap((u, i) => (u.group ? [[u.group.id, i] as const] : [])));
    const single = new Map(this.units.flatMap((u, i) => (u.group ? [] : [[u.pieces[0]!.id, i] as const])));
    const open = [root];
    while (open.length > 0) {
      const n = open.pop()!;
      if (n.kind === 'cut' && n.group !== undefined) found.push(group.get(n.group)!);
      else if (n.kind === 'cut') open.push(...n.parts);
      else if (n.kind === 'piece') found.push(single.get(n.piece)!);
    }
    return found;
  }
}

function piecesOn(root: CutNode): readonly string[] {
  const found: string[] = [];
  const open = [root];
  while (open.length > 0) {
    const n = open.pop()!;
    if (n.kind === 'cut') open.push(...n.parts);
    else if (n.kind === 'piece') found.push(n.piece);
  }
  return found;
}
