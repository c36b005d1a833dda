import { type Fill, fillFor } from './fill.ts';
import { PatternList } from './pattern-list.ts';
import { pivotInverse } from './pivot-inverse.ts';

const EPS = 1e-7;
/** A known pattern that gains less than this waits until the best new one has been looked for. */
const KNOWN_FIRST = 0.01;
/** No column: neither a pattern nor a stand-in. */
const NOTHING = Number.MIN_SAFE_INTEGER;
/** How far prices are drawn toward those of the best bound. */
const SMOOTH = 0.85;
/** Pivots between two inversions of the basis. */
const FRESH = 1000;

/**
 * The linear relaxation of cutting bars, or sheets, of one size, by column generation (P. Gilmore and R. Gomory, "A linear
 * programming approach to the cutting-stock problem", Operations Research 9, 1961): the fewest bars when
 * patterns may be cut fractional times. A dense inverse of the basis is kept; columns are patterns (index) or stand-ins
 * (-1 - kind): a piece of a kind that is cut where one of the next shorter kind is asked for, or none. They keep a piece
 * from being worth less than a shorter one (J. Valerio de Carvalho, "Using extra dual cuts to accelerate column
 * generation", INFORMS J. on Computing 17, 2005). Demands may be lowered between solves, which the dual simplex repairs.
 */
export class PatternMaster {
  readonly lengths: Int32Array;
  readonly room: number;
  readonly m: number;
  /** What is asked for in all, and what of it is still open. */
  readonly wanted: Int32Array;
  readonly demand: Int32Array;
  readonly patterns = new PatternList();
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  readonly worth: Float64Array;
  objective = 0;
  /** Set when `solve` ended because no pattern is worth adding. */
  finished = false;
  /** Work in array elements touched. */
  work = 0;
  private ownFill: Fill | undefined;
  readonly column: Float64Array;
  readonly some: Int32Array;
  readonly share: Float64Array;
  private readonly asked: Float64Array;
  private readonly centre: Float64Array;
  /** The kind that a piece of a kind may stand in for; -1 for none. */
  private readonly shorter: Int32Array;
  private lastBound = 0;
  private bestBound = 0;
  private gain = 0;
  private weights = new Float64Array(0);
  private readonly standInWeights: Float64Array;
  private pivots = 0;

  /** One that only keeps a state needs no way to fill a bar; others may share it. A filling of something else comes with its first patterns. */
  constructor(
    lengths: Int32Array,
    demand: Int32Array,
    room: number,
    shared?: { fill: Fill; first?: (kind: number) => number },
  ) {
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
    this.standInWeights = new Float64Array(m);
    this.share = new Float64Array(m);
    this.asked = new Float64Array(m);
    this.centre = new Float64Array(m);
    this.shorter = new Int32Array(m);
    this.ownFill = shared?.fill;
    for (let i = 0; i < m; i++) {
      const times = shared?.first?.(i) ?? Math.max(1, Math.min(demand[i]!, Math.floor(room / lengths[i]!)));
      this.shorter[i] = shared?.first || i === m - 1 ? -1 : i + 1;
      const alone = new Int32Array(m);
      alone[i] = times;
      this.basis[i] = this.patterns.add(alone);
      this.inverse[i * m + i] = 1 / times;
    }
    this.refresh();
  }

  get fill(): Fill {
    this.ownFill ??= fillFor(this.lengths, this.room);
    return this.ownFill;
  }

  /** A copy with its own demands and basis; patterns are shared. */
  restore(from: PatternMaster): void {
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
   * Generates patterns until the relaxation is solved, its value is at most `enough`, or, unless it is to go on `toTheEnd`,
   * the bound rounded up is as high as the value. Gives a valid lower
   * bound on it (after J. Farley, Operations Research 38, 1990), or 0 when a filling was given up.
   */
  solve(enough: number, mostPivots: number, toTheEnd = false): number {
    let bound = this.bestBound;
    let still = 0;
    this.standInWeights.fill(1);
    if (this.weights.length < this.patterns.length + mostPivots)
      this.weights = new Float64Array(2 * (this.patterns.length + mostPivots));
    this.weights.fill(1);
    for (let step = 0; step < mostPivots; step++) {
      if (this.objective <= enough + EPS) return bound;
      // What is known already costs less to look at than a new filling.
      let enter = this.bestKnown();
      let gain = enter === NOTHING ? 0 : this.gainOf(enter);
      if (enter === NOTHING) {
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
        if (this.gain <= EPS || (!toTheEnd && Math.ceil(bound - 1e-6) >= this.objective - 1e-6)) {
          this.finished = true;
          return bound;
        }
        gain = this.gain;
        enter = this.patterns.add(this.fill.count);
        this.fill.keep?.(enter);
      }
      this.load(enter);
      const row = this.leaving();
      if (row < 0) {
        this.finished = true;
        return bound;
      }
      const was = this.objective;
      this.weigh(row, enter);
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
    const seen = new Set<string>();
    for (const counts of bars) {
      const key = counts.join();
      if (seen.has(key) || counts.every((c) => c === 0)) continue;
      seen.add(key);
      this.patterns.add(counts);
    }
  }

  /**
   * The pattern or stand-in to enter next: what gains most for its weight, among patterns that gain anything to speak of
   * and stand-ins that gain anything at all. Weights after P. Harris, "Pivot selection methods of the Devex LP code",
   * Mathematical Programming 5, 1973.
   */
  private bestKnown(): number {
    const { worth, weights, standInWeights } = this;
    const { start, kind, times, length } = this.patterns;
    let at = NOTHING;
    let most = 0;
    for (let i = 0; i < this.m; i++) {
      const gain = this.standInGain(i);
      if (gain <= EPS || gain * gain <= most * standInWeights[i]!) continue;
      most = (gain * gain) / standInWeights[i]!;
      at = -1 - i;
    }
    for (let j = 0, k = 0; j < length; j++) {
      let gain = -1;
      for (const end = start[j + 1]!; k < end; k++) gain += worth[kind[k]!]! * times[k]!;
      if (gain <= KNOWN_FIRST || gain * gain <= most * weights[j]!) continue;
      most = (gain * gain) / weights[j]!;
      at = j;
    }
    this.work += length * 4;
    return at;
  }

  /** Weighs all columns anew, before `enter` takes the place of a row. */
  private weigh(row: number, enter: number): void {
    const { m, inverse, weights, standInWeights, column } = this;
    const { start, kind, times, length } = this.patterns;
    const at = row * m;
    const own = enter < 0 ? standInWeights[-1 - enter]! : weights[enter]!;
    const per = own / (column[row]! * column[row]!);
    for (let i = 0; i < m; i++) {
      const a = this.standIn(at, i);
      const w = a * a * per;
      if (w > standInWeights[i]!) standInWeights[i] = w;
    }
    for (let j = 0, k = 0; j < length; j++) {
      let a = 0;
      for (const end = start[j + 1]!; k < end; k++) a += inverse[at + kind[k]!]! * times[k]!;
      const w = a * a * per;
      if (w > weights[j]!) weights[j] = w;
    }
    const out = this.basis[row]!;
    const left = Math.max(per, 1);
    if (out < 0) standInWeights[-1 - out] = left;
    else weights[out] = left;
    this.work += length * 4;
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

  /** What is gained when a piece of kind i stands in for one of the next shorter kind, or for none. */
  private standInGain(i: number): number {
    const next = this.shorter[i]!;
    return (next < 0 ? 0 : this.worth[next]!) - this.worth[i]!;
  }

  /** A stand-in of kind i in a row of the inverse. */
  private standIn(row: number, i: number): number {
    const next = this.shorter[i]!;
    return (next < 0 ? 0 : this.inverse[row + next]!) - this.inverse[row + i]!;
  }

  private gainOf(enter: number): number {
    if (enter < 0) return this.standInGain(-1 - enter);
    return this.patterns.worth(enter, this.worth) - 1;
  }

  /** The entering column in terms of the basis. */
  private load(enter: number): void {
    const { m, column, inverse } = this;
    if (enter < 0) {
      const i = -1 - enter;
      for (let r = 0; r < m; r++) column[r] = this.standIn(r * m, i);
      return;
    }
    const { start, kind, times } = this.patterns;
    const end = start[enter + 1]!;
    for (let r = 0, at = 0; r < m; r++, at += m) {
      let v = 0;
      for (let k = start[enter]!; k < end; k++) v += inverse[at + kind[k]!]! * times[k]!;
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
      const a = this.standIn(at, i);
      if (a > -1e-6) continue;
      const ratio = Math.max(0, -this.standInGain(i)) / -a;
      if (ratio < least) {
        least = ratio;
        best = -1 - i;
      }
    }
    const { start, kind, times } = this.patterns;
    const { worth } = this;
    for (let j = 0, k = 0; j < this.patterns.length; j++) {
      const from = k;
      const end = start[j + 1]!;
      let a = 0;
      for (; k < end; k++) a += inverse[at + kind[k]!]! * times[k]!;
      if (a > -1e-6) continue;
      let v = 1;
      for (let e = from; e < end; e++) v -= worth[kind[e]!]! * times[e]!;
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
    const { m, worth, some, share } = this;
    const n = pivotInverse(this, row);
    for (let k = 0; k < n; k++) worth[some[k]!]! -= gain * share[k]!;
    this.objective -= gain * this.x[row]!;
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
      if (b < 0) {
        a[(-1 - b) * m + r] = -1;
        if (this.shorter[-1 - b]! >= 0) a[this.shorter[-1 - b]! * m + r] = 1;
      } else {
        const { start, kind, times } = this.patterns;
        for (let k = start[b]!; k < start[b + 1]!; k++) a[kind[k]! * m + r] = times[k]!;
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
