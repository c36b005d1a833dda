import { BarMaster } from './bar-master.ts';
import { Chance } from './chance.ts';
import { finishBars } from './finish-bars.ts';

/** Work between two pauses. */
const PAUSE = 1_500_000;
/** Patterns tried at each step of a dive before it is given up. */
const MOST_TRIES = 4;
/** Steps of a dive between two states it may go back to, and how often it may. */
const RUNG = 6;
const MOST_FALLS = 25;
/** Fillings tried for the rest when a dive can't go on. */
const MOST_FINISHES = 20_000;

/** Bars found: patterns (pieces by kind) and how often each is cut. */
export interface BarsFound {
  readonly bars: readonly { readonly counts: Int32Array; readonly times: number }[];
  readonly total: number;
}

export interface BarsStep {
  readonly work: number;
  readonly best: BarsFound;
  readonly bound: number;
  /** Values that show the bound, when it comes from the relaxation. */
  readonly values?: Int32Array;
}

/** What one bar is worth in the whole values of a proof. */
export const WORTH = 100_000_000;

/**
 * The fewest bars of one length, in three steps: laying in order of length (best fit); the relaxation, whose
 * value rounded up is the bound; then dives, which settle patterns one by one and solve the relaxation of the
 * rest again, with chance in the choice from the second dive on.
 */
export function* searchBars(
  lengths: Int32Array,
  demand: Int32Array,
  room: number,
  areaBound: number,
  effort: number,
  seed: number,
): Generator<BarsStep> {
  let best = bestFit(lengths, demand, room);
  let bound = areaBound;
  yield { work: 0, best, bound };
  if (best.total <= bound) return;

  const master = new BarMaster(lengths, demand, room);
  let sure = 0;
  for (;;) {
    sure = Math.max(sure, master.solve(0, 60));
    const done = Math.ceil(sure - 1e-6) >= master.objective - 1e-6 || master.work > effort;
    yield { work: master.work, best, bound };
    if (done || master.finished) break;
  }
  let values: Int32Array | undefined;
  const shown = master.values(WORTH);
  let worth = 0;
  shown.forEach((v, i) => {
    worth += v * demand[i]!;
  });
  const proven = Math.ceil(worth / WORTH - 1e-12);
  if (proven > bound) {
    bound = proven;
    values = shown;
  }
  const step = (work: number): BarsStep => (values ? { work, best, bound, values } : { work, best, bound });

  const chance = new Chance(seed);
  const dive = new BarMaster(lengths, demand, room);
  dive.patterns.splice(0, dive.patterns.length, ...master.patterns);
  const before = new BarMaster(lengths, demand, room);
  const ladder: { readonly state: BarMaster; depth: number; total: number }[] = [];
  const spent = () => master.work + dive.work;
  /** Fills bars with the few pieces a dive leaves; true when that makes a better plan. */
  const finish = (
    target: number,
    total: number,
    settled: readonly (readonly [number, number])[],
  ): boolean => {
    const rest = dive.empty ? [] : finishBars(lengths, dive.demand, room, target - total, MOST_FINISHES);
    if (!rest || total + rest.length >= best.total) return false;
    const bars = drawn(dive, settled);
    best = { bars: [...bars, ...rest.map((counts) => ({ counts, times: 1 }))], total: total + rest.length };
    return true;
  };
  for (let dives = 0; best.total > bound && spent() < effort; dives++) {
    const target = dives % 4 === 3 && best.total > bound + 1 ? best.total - 1 : bound;
    const settled: [pattern: number, times: number][] = [];
    dive.restore(master);
    let noise = dives === 0 ? 0 : 0.15 * (1 + (dives % 4));
    let paused = dive.work;
    let total = settleWhole(dive, settled);
    let rungs = 0;
    let falls = 0;
    for (let steps = 0; !dive.empty; steps++) {
      if (steps % RUNG === 0) {
        ladder[rungs] ??= { state: new BarMaster(lengths, demand, room), depth: 0, total: 0 };
        const rung = ladder[rungs++]!;
        rung.state.restore(dive);
        rung.depth = settled.length;
        rung.total = total;
      }
      before.restore(dive);
      const depth = settled.length;
      const picks = choices(dive, chance, noise);
      let open = false;
      for (let t = 0; t < picks.length && !open; t++) {
        if (t > 0) {
          dive.restore(before);
          settled.length = depth;
        }
        const more = cut(dive, picks[t]!, 1, settled);
        dive.refresh();
        if (!dive.repair()) continue;
        dive.solve(target - total - more, 2000);
        open = dive.objective <= target - total - more + 1e-5;
        if (open) total += more + settleWhole(dive, settled);
      }
      if (!open) {
        dive.restore(before);
        settled.length = depth;
        if (finish(target, total, settled) || ++falls > MOST_FALLS) break;
        // Back to a rung further up, the further the more often it fell.
        rungs = Math.max(1, rungs - chance.below(2 + (falls >> 2)));
        const rung = ladder[rungs - 1]!;
        dive.restore(rung.state);
        settled.length = rung.depth;
        total = rung.total;
        noise = Math.max(noise, 0.3);
        steps = 0;
      }
      if (dive.work - paused > PAUSE) {
        paused = dive.work;
        yield step(spent());
        if (spent() > effort) break;
      }
    }
    if (dive.empty) finish(target, total, settled);
    yield step(spent());
  }
  yield step(master.work + dive.work);
}

/** Settles the whole parts of the relaxation, which costs nothing. Gives the bars settled. */
function settleWhole(m: BarMaster, settled: [number, number][]): number {
  let total = 0;
  for (let r = 0; r < m.m; r++) {
    const whole = Math.floor(m.x[r]! + 1e-6);
    if (m.basis[r]! >= 0 && whole > 0) total += cut(m, m.basis[r]!, whole, settled);
  }
  if (total > 0) m.refresh();
  return total;
}

/** The patterns that are best settled next: the greatest parts of a bar, with some chance. */
function choices(m: BarMaster, chance: Chance, noise: number): number[] {
  const picks: { pattern: number; score: number }[] = [];
  for (let r = 0; r < m.m; r++) {
    const part = m.x[r]!;
    if (m.basis[r]! < 0 || part < 1e-6) continue;
    picks.push({ pattern: m.basis[r]!, score: part + (noise > 0 ? noise * chance.share() : 0) });
  }
  picks.sort((a, b) => b.score - a.score || a.pattern - b.pattern);
  return picks.slice(0, MOST_TRIES).map((p) => p.pattern);
}

/** Cuts a pattern; what is more than the demand is left out later, when it is drawn up. */
function cut(m: BarMaster, pattern: number, times: number, settled: [number, number][]): number {
  const p = m.patterns[pattern]!;
  let used = 0;
  for (let t = 0; t < times; t++) {
    let any = false;
    for (let k = 0; k < p.kinds.length; k++) {
      const i = p.kinds[k]!;
      const take = Math.min(p.counts[k]!, m.demand[i]!);
      if (take > 0) any = true;
      m.demand[i]! -= take;
    }
    if (!any) break;
    used++;
  }
  if (used > 0) settled.push([pattern, used]);
  return used;
}

/** Patterns as cut, in the order they were settled, with nothing cut twice. */
function drawn(m: BarMaster, settled: readonly (readonly [number, number])[]): BarsFound['bars'] {
  const left = m.wanted.map((w, i) => w - m.demand[i]!);
  const bars: { counts: Int32Array; times: number }[] = [];
  for (const [pattern, times] of settled) {
    const p = m.patterns[pattern]!;
    let open = times;
    while (open > 0) {
      const one = new Int32Array(m.m);
      let alike = open;
      for (let k = 0; k < p.kinds.length; k++) {
        const i = p.kinds[k]!;
        one[i] = Math.min(p.counts[k]!, left[i]!);
        if (one[i]! > 0) alike = Math.min(alike, Math.floor(left[i]! / one[i]!));
      }
      if (one.every((c) => c === 0)) break;
      one.forEach((c, i) => {
        left[i]! -= c * alike;
      });
      bars.push({ counts: one, times: alike });
      open -= alike;
    }
  }
  return bars;
}

/** Longest pieces first, each in the fullest bar that still holds it. */
function bestFit(lengths: Int32Array, demand: Int32Array, room: number): BarsFound {
  const order = [...lengths.keys()].sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const bars: { counts: Int32Array; times: number }[] = [];
  const left: number[] = [];
  for (const i of order)
    for (let c = 0; c < demand[i]!; c++) {
      let at = -1;
      for (let b = 0; b < bars.length; b++)
        if (left[b]! >= lengths[i]! && (at < 0 || left[b]! < left[at]!)) at = b;
      if (at < 0) {
        at = bars.length;
        bars.push({ counts: new Int32Array(lengths.length), times: 1 });
        left.push(room);
      }
      bars[at]!.counts[i]!++;
      left[at]! -= lengths[i]!;
    }
  return { bars, total: bars.length };
}
