import { FillBar, MOST_ENTRIES } from './fill-bar.ts';
import { FillFour } from './fill-four.ts';

const EPS = 1e-7;
/** A known pattern that gains less than this waits until the best new one has been looked for. */
const KNOWN_FIRST = 0.01;
/** How far prices are drawn toward those of the best bound. */
const SMOOTH = 0.85;
/** Pivots between two inversions of the basis. */
const FRESH = 500;
/** Pairs of more kinds than this would be too many to look through. */
const MOST_KINDS_FOR_FOUR = 400;

/** A way to fill a bar: kinds and how often. */
export interface BarPattern {
  readonly kinds: Int32Array;
  readonly counts: Int32Array;
}

/**
 * The linear relaxation of one-dimensional cutting, by column generation (P. Gilmore and R. Gomory, "A linear
 * programming approach to the cutting-stock problem", Operations Research 9, 1961): the fewest bars when
 * patterns may be cut fractional times. A dense inverse of the basis is kept; columns are patterns (index) or
 * surplus of a kind (-1 - kind). Demands may be lowered between solves, which the dual simplex repairs.
 */
export class BarMaster {
  readonly lengths: Int32Array;
  readonly room: number;
  readonly m: number;
  /** What is asked for in all, and what of it is still open. */
  readonly wanted: Int32Array;
  readonly demand: Int32Array;
  readonly patterns: BarPattern[] = [];
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  readonly worth: Float64Array;
  objective = 0;
  /** Set when `solve` ended because no pattern is worth adding. */
  finished = false;
  /** Work in array elements touched. */
  work = 0;
  private readonly fill: FillBar | FillFour;
  private readonly column: Float64Array;
  private readonly some: Int32Array;
  private readonly share: Float64Array;
  private readonly asked: Float64Array;
  private readonly centre: Float64Array;
  private lastBound = 0;
  private bestBound = 0;
  private gain = 0;
  private pivots = 0;

  constructor(lengths: Int32Array, demand: Int32Array, room: number) {
    this.lengths = lengths;
    this.room = room;
    this.wanted = demand;
    this.demand = demand.slice();
    const m = lengths.length;
    this.m = m;
    this.basis = new Int32Array(m);
    this.inverse = new Float64Array(m * m);
    this.x = new Float64Array(m);
    this.worth = new Float64Array(m);
    this.column = new Float64Array(m);
    this.some = new Int32Array(m);
    this.share = new Float64Array(m);
    this.asked = new Float64Array(m);
    this.centre = new Float64Array(m);
    this.fill = fillFor(lengths, room);
    for (let i = 0; i < m; i++) {
      const times = Math.max(1, Math.min(demand[i]!, Math.floor(room / lengths[i]!)));
      this.basis[i] = this.patterns.length;
      this.patterns.push({ kinds: Int32Array.of(i), counts: Int32Array.of(times) });
      this.inverse[i * m + i] = 1 / times;
    }
    this.refresh();
  }

  /** A copy with its own demands and basis; patterns are shared. */
  restore(from: BarMaster): void {
    this.demand.set(from.demand);
    this.basis.set(from.basis);
    this.inverse.set(from.inverse);
    this.work += this.m * this.m;
    this.refresh();
  }

  /** Whether nothing is asked for any more. */
  get empty(): boolean {
    return this.demand.every((d) => d === 0);
  }

  /** Recomputes the values of the basis and the worth of the kinds. */
  refresh(): void {
    this.bestBound = 0;
    const { m, inverse, x, worth } = this;
    worth.fill(0);
    let objective = 0;
    for (let r = 0; r < m; r++) {
      let v = 0;
      const row = r * m;
      for (let i = 0; i < m; i++) v += inverse[row + i]! * this.demand[i]!;
      x[r] = v;
      if (this.basis[r]! < 0) continue;
      objective += v;
      for (let i = 0; i < m; i++) worth[i]! += inverse[row + i]!;
    }
    this.objective = objective;
    this.work += 2 * m * m;
  }

  /**
   * Generates patterns until the relaxation is solved, or its value is at most `enough`. Gives a valid lower
   * bound on it (after J. Farley, Operations Research 38, 1990), or 0 when a filling was given up.
   */
  solve(enough: number, mostPivots: number): number {
    let bound = this.bestBound;
    let still = 0;
    for (let step = 0; step < mostPivots; step++) {
      if (this.objective <= enough + EPS) return bound;
      let enter = 0;
      let gain = EPS;
      for (let i = 0; i < this.m; i++)
        if (-this.worth[i]! > gain) {
          gain = -this.worth[i]!;
          enter = -1 - i;
        }
      // Patterns that are known already cost less to look at than a new filling.
      const at = this.bestKnown();
      const known = at >= 0 && this.gain > gain;
      if (known) {
        enter = at;
        gain = this.gain;
      }
      if (enter === 0 && !known) {
        const smooth = bound > 0 && this.price(SMOOTH);
        if (this.lastBound > bound) {
          bound = this.bestBound = this.lastBound;
          this.centre.set(this.asked);
        }
        if (!smooth) {
          this.price(0);
          if (this.lastBound > bound) {
            bound = this.bestBound = this.lastBound;
            this.centre.set(this.asked);
          }
        }
        if (this.gain <= EPS || Math.ceil(bound - 1e-6) >= this.objective - 1e-6) {
          this.finished = true;
          return bound;
        }
        gain = this.gain;
        enter = this.patterns.length;
        this.patterns.push(patternOf(this.fill.count));
      }
      this.load(enter);
      const row = this.leaving();
      if (row < 0) {
        this.finished = true;
        return bound;
      }
      const was = this.objective;
      this.pivot(row, enter, gain);
      still = this.objective < was - 1e-9 ? 0 : still + 1;
      if (still > 20 * this.m + 1000) {
        this.finished = true;
        return bound;
      }
    }
    return bound;
  }

  /** Adds patterns found elsewhere, given as how many of each kind. */
  know(bars: Iterable<Int32Array>): void {
    const seen = new Set(this.patterns.map((p) => `${p.kinds} ${p.counts}`));
    for (const counts of bars) {
      const p = patternOf(counts);
      const key = `${p.kinds} ${p.counts}`;
      if (seen.has(key) || p.kinds.length === 0) continue;
      seen.add(key);
      this.patterns.push(p);
    }
  }

  /** The known pattern that gains most, or -1 when none gains anything to speak of. */
  private bestKnown(): number {
    let at = -1;
    this.gain = KNOWN_FIRST;
    for (let j = 0; j < this.patterns.length; j++) {
      const gain = this.gainOf(j);
      if (gain > this.gain) {
        this.gain = gain;
        at = j;
      }
    }
    this.work += this.patterns.length * 4;
    return at;
  }

  /** Brings values below 0 back to 0 or more after demands fell. False when it can't with the known patterns. */
  repair(): boolean {
    for (let step = 0; step < 4 * this.m + 200; step++) {
      let row = -1;
      let least = -EPS;
      for (let r = 0; r < this.m; r++)
        if (this.x[r]! < least) {
          least = this.x[r]!;
          row = r;
        }
      if (row < 0) return true;
      const enter = this.entering(row);
      if (enter === undefined) return false;
      this.load(enter);
      this.pivot(row, enter, this.gainOf(enter));
    }
    return false;
  }

  /** Whole bars' worth of a bound, as whole values that a judge can check: no filling is worth more than `most`. */
  values(most: number): Int32Array {
    this.fill.solve(this.centre, this.demand);
    const scale = most / Math.max(1, this.fill.value * (1 + 1e-9));
    return Int32Array.from(this.centre, (w) => Math.max(0, Math.floor(w * scale)));
  }

  /**
   * Finds the best filling for the worth of the kinds, drawn toward the worth that gave the best bound so far
   * (P. Wentges, "Weighted Dantzig-Wolfe decomposition", Int. Trans. in OR 4, 1997). True when it helps.
   */
  private price(toward: number): boolean {
    const { asked, worth, centre, m } = this;
    for (let i = 0; i < m; i++) asked[i] = toward * centre[i]! + (1 - toward) * Math.max(0, worth[i]!);
    const before = this.fill.work;
    const sure = this.fill.solve(asked, this.demand);
    this.work += this.fill.work - before;
    let total = 0;
    let value = 0;
    for (let i = 0; i < m; i++) {
      total += asked[i]! * this.demand[i]!;
      value += worth[i]! * this.fill.count[i]!;
    }
    this.lastBound = sure ? total / Math.max(1e-9, this.fill.value) : 0;
    this.gain = value - 1;
    return this.gain > EPS;
  }

  private gainOf(enter: number): number {
    if (enter < 0) return -this.worth[-1 - enter]!;
    const p = this.patterns[enter]!;
    let v = -1;
    for (let k = 0; k < p.kinds.length; k++) v += this.worth[p.kinds[k]!]! * p.counts[k]!;
    return v;
  }

  /** The entering column in terms of the basis. */
  private load(enter: number): void {
    const { m, column, inverse } = this;
    if (enter < 0) {
      const i = -1 - enter;
      for (let r = 0; r < m; r++) column[r] = -inverse[r * m + i]!;
      return;
    }
    const p = this.patterns[enter]!;
    const n = p.kinds.length;
    for (let r = 0; r < m; r++) {
      let v = 0;
      for (let k = 0; k < n; k++) v += inverse[r * m + p.kinds[k]!]! * p.counts[k]!;
      column[r] = v;
    }
  }

  private leaving(): number {
    let row = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let r = 0; r < this.m; r++) {
      const u = this.column[r]!;
      if (u < 1e-6) continue;
      const ratio = Math.max(0, this.x[r]!) / u;
      if (ratio < least - 1e-8 || (ratio < least + 1e-8 && u > this.column[row]!)) {
        least = Math.min(least, ratio);
        row = r;
      }
    }
    return row;
  }

  /** The column that may enter for a row below 0 at the least loss. */
  private entering(row: number): number | undefined {
    const { m, inverse } = this;
    const at = row * m;
    let best: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < m; i++) {
      const a = -inverse[at + i]!;
      if (a > -1e-6) continue;
      const ratio = Math.max(0, this.worth[i]!) / -a;
      if (ratio < least) {
        least = ratio;
        best = -1 - i;
      }
    }
    for (let j = 0; j < this.patterns.length; j++) {
      const p = this.patterns[j]!;
      let a = 0;
      let v = 1;
      for (let k = 0; k < p.kinds.length; k++) {
        a += inverse[at + p.kinds[k]!]! * p.counts[k]!;
        v -= this.worth[p.kinds[k]!]! * p.counts[k]!;
      }
      if (a > -1e-6) continue;
      const ratio = Math.max(0, v) / -a;
      if (ratio < least) {
        least = ratio;
        best = j;
      }
    }
    this.work += this.patterns.length * 4;
    return best;
  }

  private pivot(row: number, enter: number, gain: number): void {
    const { m, inverse, column, x, worth } = this;
    const u = column[row]!;
    const at = row * m;
    // Most of the row is often nothing.
    const { some, share } = this;
    let n = 0;
    for (let i = 0; i < m; i++) {
      if (inverse[at + i] === 0) continue;
      inverse[at + i]! /= u;
      share[n] = inverse[at + i]!;
      some[n++] = i;
    }
    const t = x[row]! / u;
    for (let r = 0; r < m; r++) {
      if (r === row) continue;
      const c = column[r]!;
      if (c === 0) continue;
      x[r]! -= c * t;
      const to = r * m;
      for (let k = 0; k < n; k++) inverse[to + some[k]!]! -= c * share[k]!;
    }
    x[row] = t;
    for (let k = 0; k < n; k++) worth[some[k]!]! -= gain * share[k]!;
    this.objective -= gain * t;
    this.basis[row] = enter;
    this.work += m * n;
    if (++this.pivots % FRESH === 0) this.invert();
  }

  /** Inverts the basis anew, against rounding that builds up. */
  private invert(): void {
    const { m } = this;
    const a = new Float64Array(m * m);
    for (let r = 0; r < m; r++) {
      const b = this.basis[r]!;
      if (b < 0) a[(-1 - b) * m + r] = -1;
      else {
        const p = this.patterns[b]!;
        for (let k = 0; k < p.kinds.length; k++) a[p.kinds[k]! * m + r] = p.counts[k]!;
      }
    }
    const inv = new Float64Array(m * m);
    for (let i = 0; i < m; i++) inv[i * m + i] = 1;
    for (let c = 0; c < m; c++) {
      let pick = c;
      for (let r = c + 1; r < m; r++) if (Math.abs(a[r * m + c]!) > Math.abs(a[pick * m + c]!)) pick = r;
      const pivot = a[pick * m + c]!;
      if (Math.abs(pivot) < 1e-11) return;
      if (pick !== c)
        for (const of of [a, inv]) {
          const was = of.slice(pick * m, pick * m + m);
          of.copyWithin(pick * m, c * m, c * m + m);
          of.set(was, c * m);
        }
      for (let i = 0; i < m; i++) {
        a[c * m + i]! /= pivot;
        inv[c * m + i]! /= pivot;
      }
      for (let r = 0; r < m; r++) {
        const f = a[r * m + c]!;
        if (r === c || f === 0) continue;
        // Left of the column nothing is left of the pivot's row.
        for (let i = c; i < m; i++) a[r * m + i]! -= f * a[c * m + i]!;
        for (let i = 0; i < m; i++) inv[r * m + i]! -= f * inv[c * m + i]!;
      }
    }
    this.inverse.set(inv);
    this.work += m * m * m;
    const bound = this.bestBound;
    this.refresh();
    this.bestBound = bound;
  }
}

/** The way to fill a bar that suits: a table while it stays small, else pairs where four pieces are the most. */
function fillFor(lengths: Int32Array, room: number): FillBar | FillFour {
  const shortest = Math.min(...lengths);
  const fine = lengths.length * (room + 1) > MOST_ENTRIES;
  return fine && room < 5 * shortest && lengths.length <= MOST_KINDS_FOR_FOUR
    ? new FillFour(lengths, room)
    : new FillBar(lengths, room);
}

function patternOf(counts: Int32Array): BarPattern {
  const kinds: number[] = [];
  counts.forEach((c, i) => {
    if (c > 0) kinds.push(i);
  });
  return { kinds: Int32Array.from(kinds), counts: Int32Array.from(kinds, (i) => counts[i]!) };
}
