import type { Chance } from '../../measure/index.ts';
import { countedByKind } from './bar-pieces.ts';
import type { BarsFound } from './bars-found.ts';
import { bestFit } from './best-fit.ts';
import { MOST_ROOM } from './fill-exactly.ts';
import { finishBars } from './finish-bars.ts';
import { FitLast } from './fit-last.ts';
import { PatternMaster } from './pattern-master.ts';

/** Patterns tried at each step of a dive before it is given up. */
const MOST_TRIES = 5;
/** One pattern more is settled at once for each so many bars that are open. */
const MANY_OPEN = 12;
/** Steps of a dive between two states it may go back to, and how often it may. */
const RUNG = 6;
const MOST_FALLS = 25;
/** Fillings tried for the rest when a dive can't go on. */
const MOST_FINISHES = 20_000;
const MOST_FITS = 2000;
const MOST_LAST = 14;

type Settled = [pattern: number, times: number][];

/**
 * Dives into a solved relaxation: settles patterns, solves the relaxation of what is still asked for, and goes on
 * while it says that the target can be met. Where it can't, other patterns are tried, then the last pieces are
 * put into bars by trying, then the dive goes back some steps.
 */
export class BarDive {
  best: BarsFound;
  private readonly master: PatternMaster;
  private readonly dive: PatternMaster;
  private readonly before: PatternMaster;
  private readonly ladder: { readonly state: PatternMaster; depth: number; total: number }[] = [];
  private readonly chance: Chance;
  private last: FitLast | undefined;

  constructor(master: PatternMaster, best: BarsFound, chance: Chance) {
    this.master = master;
    this.best = best;
    this.chance = chance;
    this.dive = new PatternMaster(master.lengths, master.wanted, master.room, master);
    this.dive.patterns.copyFrom(master.patterns);
    this.before = new PatternMaster(master.lengths, master.wanted, master.room);
  }

  get work(): number {
    return this.dive.work + (this.last?.work ?? 0);
  }

  /** Dives again and again until `bound` bars are enough; pauses after every step. */
  *run(bound: number): Generator<void> {
    for (let dives = 0; this.best.total > bound; dives++) {
      const target = dives % 4 === 3 && this.best.total > bound + 1 ? this.best.total - 1 : bound;
      yield* this.once(target, dives === 0 ? 0 : 0.15 * (1 + (dives % 4)));
    }
  }

  private *once(target: number, firstNoise: number): Generator<void> {
    const { dive, before, chance } = this;
    const settled: Settled = [];
    dive.restore(this.master);
    let noise = firstNoise;
    let total = settleWhole(dive, settled);
    let rungs = 0;
    let falls = 0;
    for (let steps = 0; !dive.empty; steps++) {
      if (steps % RUNG === 0) this.leaveRung(rungs++, settled.length, total);
      before.restore(dive);
      const depth = settled.length;
      const more = this.step(target - total, choices(dive, chance, noise), settled);
      if (more > 0) total += more + settleWhole(dive, settled);
      else {
        dive.restore(before);
        settled.length = depth;
        this.finish(target, total, settled);
        if (this.best.total <= target || ++falls > MOST_FALLS) return;
        // Back to a state further up, the further the more often it fell.
        rungs = Math.max(1, rungs - chance.below(2 + (falls >> 2)));
        const rung = this.ladder[rungs - 1]!;
        dive.restore(rung.state);
        settled.length = rung.depth;
        total = rung.total;
        noise = Math.max(noise, 0.3);
        steps = 0;
      }
      yield;
    }
    this.finish(target, total, settled);
  }

  private leaveRung(at: number, depth: number, total: number): void {
    const m = this.master;
    this.ladder[at] ??= { state: new PatternMaster(m.lengths, m.wanted, m.room), depth, total };
    const rung = this.ladder[at]!;
    rung.state.restore(this.dive);
    rung.depth = depth;
    rung.total = total;
  }

  /** Settles patterns so that the rest may still do with `allowed` bars in all; gives how many, or 0. */
  private step(allowed: number, picks: readonly number[], settled: Settled): number {
    const { dive } = this;
    const depth = settled.length;
    for (let t = 0; t < Math.min(MOST_TRIES, picks.length + 1); t++) {
      if (t > 0) {
        dive.restore(this.before);
        settled.length = depth;
      }
      // First several at once while much is open, then one by one.
      const at = Math.max(0, t - 1);
      const some = t === 0 ? Math.max(1, Math.floor(dive.objective / MANY_OPEN)) : 1;
      let more = 0;
      for (let k = at; k < Math.min(at + some, picks.length); k++) more += cutWhole(dive, picks[k]!, settled);
      if (more === 0) more = cut(dive, picks[at]!, 1, settled);
      dive.refresh();
      if (!dive.repair()) continue;
      dive.solve(allowed - more, 2000);
      if (dive.objective <= allowed - more + 1e-5 && dive.objective > -1e-5) return more;
    }
    return 0;
  }

  /** Brings what is still asked for into so many bars, if trying finds how. */
  private fitRest(bars: number): Int32Array[] | undefined {
    const { lengths, room } = this.master;
    if (room > MOST_ROOM) return finishBars(lengths, this.dive.demand, room, bars, MOST_FINISHES);
    if (bars > MOST_LAST) return undefined;
    this.last ??= new FitLast(lengths, room, this.chance);
    const fitted = this.last.fit(this.dive.demand, bars, MOST_FITS);
    return fitted?.map((bar) => countedByKind(bar, lengths.length));
  }

  /** Fills bars with what a dive leaves over, and keeps the plan if it is better. */
  private finish(target: number, total: number, settled: Settled): void {
    const { dive } = this;
    const { lengths, room } = this.master;
    let rest = dive.empty ? [] : this.fitRest(target - total);
    rest ??= bestFit(lengths, dive.demand, room).bars.map((b) => b.counts);
    if (total + rest.length >= this.best.total) return;
    const bars = [...drawn(dive, settled), ...rest.map((counts) => ({ counts, times: 1 }))];
    this.best = { bars, total: total + rest.length };
  }
}

/** Settles the whole parts of the relaxation, which costs nothing. Gives the bars settled. */
function settleWhole(m: PatternMaster, settled: Settled): number {
  let total = 0;
  for (let r = 0; r < m.m; r++) {
    const whole = Math.floor(m.x[r]! + 1e-6);
    if (m.basis[r]! >= 0 && whole > 0) total += cut(m, m.basis[r]!, whole, settled);
  }
  if (total > 0) m.refresh();
  return total;
}

/** The patterns that are best settled next: the greatest parts of a bar, with some chance. */
function choices(m: PatternMaster, chance: Chance, noise: number): number[] {
  const picks: { pattern: number; score: number }[] = [];
  for (let r = 0; r < m.m; r++) {
    const part = m.x[r]!;
    if (m.basis[r]! < 0 || part < 1e-6) continue;
    picks.push({ pattern: m.basis[r]!, score: part + (noise > 0 ? noise * chance.share() : 0) });
  }
  picks.sort((a, b) => b.score - a.score || a.pattern - b.pattern);
  return picks.map((p) => p.pattern);
}

/** Cuts a pattern: for a piece that is asked for no more, the next shorter one that is; `drawn` repeats it. */
function cut(m: PatternMaster, pattern: number, times: number, settled: Settled): number {
  const p = m.patterns.at(pattern);
  let used = 0;
  for (let t = 0; t < times; t++) {
    let any = false;
    for (let k = 0; k < p.kinds.length; k++)
      for (let c = p.counts[k]!; c > 0; c--) {
        const i = openFrom(p.kinds[k]!, m.demand);
        if (i === undefined) break;
        any = true;
        m.demand[i]!--;
      }
    if (!any) break;
    used++;
  }
  if (used > 0) settled.push([pattern, used]);
  return used;
}

/** Cuts a pattern once if all its pieces are still asked for. */
function cutWhole(m: PatternMaster, pattern: number, settled: Settled): number {
  const p = m.patterns.at(pattern);
  for (let k = 0; k < p.kinds.length; k++) if (p.counts[k]! > m.demand[p.kinds[k]!]!) return 0;
  return cut(m, pattern, 1, settled);
}

/** A kind that is still open: this one, or the next shorter. */
function openFrom(kind: number, open: Int32Array): number | undefined {
  for (let i = kind; i < open.length; i++) if (open[i]! > 0) return i;
  return undefined;
}

/** Patterns as cut, in the order they were settled. */
function drawn(m: PatternMaster, settled: Settled): BarsFound['bars'] {
  const left = m.wanted.map((w, i) => w - m.demand[i]!);
  const bars: { counts: Int32Array; times: number }[] = [];
  for (const [pattern, times] of settled) {
    const p = m.patterns.at(pattern);
    let open = times;
    while (open > 0) {
      const one = new Int32Array(m.m);
      for (let k = 0; k < p.kinds.length; k++)
        for (let c = p.counts[k]!; c > 0; c--) {
          const i = openFrom(p.kinds[k]!, left);
          if (i === undefined) break;
          one[i]!++;
          left[i]!--;
        }
      if (one.every((c) => c === 0)) break;
      bars.push({ counts: one, times: 1 });
      open--;
    }
  }
  return bars;
}
