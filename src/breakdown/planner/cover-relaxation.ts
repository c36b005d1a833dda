import type { PatternList } from './pattern-list.ts';
import { pivotInverse } from './pivot-inverse.ts';

/** What is off by less than this is rounding. */
const EPS = 1e-7;
/** Pivots of one solution, for each row. */
const MOST_PIVOTS = 25;
/** An entry of a row smaller than this is no pivot. */
const LEAST_PIVOT = 1e-7;

/** A state of the relaxation that it may go back to. */
export interface CoverState {
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
}

/**
 * The relaxation of an exact cover: the fewest columns, in parts if need be, that cover each demand exactly. All columns are
 * known, so that fixing some of them or doing without leaves a basis that is still dual feasible, and the dual simplex
 * goes on from there. Columns are numbers; a basis entry below 0 stands for a row that nothing covers yet (-1 - row).
 */
export class CoverRelaxation {
  readonly m: number;
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  readonly price: Float64Array;
  objective = 0;
  work = 0;
  private readonly columns: PatternList;
  private readonly cost: Float64Array;
  readonly column: Float64Array;
  private readonly isBasic: Uint8Array;
  readonly some: Int32Array;
  readonly share: Float64Array;

  /** `cost` is a little more than 1 for some columns, so that no two are quite alike. */
  constructor(columns: PatternList, kinds: number, cost: Float64Array) {
    this.columns = columns;
    this.cost = cost;
    this.m = kinds;
    this.basis = new Int32Array(kinds);
    this.inverse = new Float64Array(kinds * kinds);
    this.x = new Float64Array(kinds);
    this.price = new Float64Array(kinds);
    this.column = new Float64Array(kinds);
    this.some = new Int32Array(kinds);
    this.share = new Float64Array(kinds);
    this.isBasic = new Uint8Array(columns.length);
    for (let i = 0; i < kinds; i++) {
      this.basis[i] = -1 - i;
      this.inverse[i * kinds + i] = 1;
    }
  }

  save(to: CoverState): void {
    to.basis.set(this.basis);
    to.inverse.set(this.inverse);
    this.work += this.m * this.m;
  }

  restore(from: CoverState): void {
    this.basis.set(from.basis);
    this.inverse.set(from.inverse);
    this.isBasic.fill(0);
    for (const b of this.basis) if (b >= 0) this.isBasic[b] = 1;
    this.work += this.m * this.m;
  }

  /** Covers the demands with columns that are open. False when that can't be done, not with `most` columns, or not in time. */
  solve(demand: Int32Array, open: Uint8Array, most: number): boolean {
    const { m, inverse, x, price, basis } = this;
    price.fill(0);
    for (let r = 0; r < m; r++) {
      let v = 0;
      const row = r * m;
      for (let i = 0; i < m; i++) v += inverse[row + i]! * demand[i]!;
      x[r] = v;
      const b = basis[r]!;
      if (b < 0) continue;
      const c = this.cost[b]!;
      for (let i = 0; i < m; i++) price[i]! += c * inverse[row + i]!;
    }
    this.work += 2 * m * m;
    for (let step = 0; step < MOST_PIVOTS * m; step++) {
      let row = -1;
      let worst = 0;
      let objective = 0;
      for (let r = 0; r < m; r++) {
        const v = x[r]!;
        const b = basis[r]!;
        if (b >= 0) objective += v * this.cost[b]!;
        const off = v < 0 ? -v : b < 0 || open[b] === 0 ? v : 0;
        if (off < EPS) continue;
        // How far off it is in the space of the columns (dual steepest edge).
        let norm = 0;
        for (let i = 0, at = r * m; i < m; i++) norm += inverse[at + i]! * inverse[at + i]!;
        this.work += m;
        if (off * off > worst * norm) {
          worst = (off * off) / norm;
          row = r;
        }
      }
      this.objective = objective;
      if (objective > most) return false;
      if (row < 0) return true;
      const enter = this.entering(row, open, x[row]! > 0 ? 1 : -1);
      if (enter < 0) return false;
      this.pivot(row, enter);
    }
    // It turns in circles, or has lost its numbers: an attempt with other costs does without that state.
    return false;
  }

  /** How often a column is taken. */
  part(j: number): number {
    return this.isBasic[j] === 1 ? this.x[this.basis.indexOf(j)]! : 0;
  }

  /** What a column would cost above its worth. */
  reducedCost(j: number): number {
    return this.cost[j]! - this.columns.worth(j, this.price);
  }

  /** The open column that takes the place of a row at the least loss; -1 when there is none. */
  private entering(row: number, open: Uint8Array, sign: 1 | -1): number {
    const { inverse, price, cost, isBasic } = this;
    const { start, kind, times, length } = this.columns;
    const at = row * this.m;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let pivot = 0;
    for (let j = 0; j < length; j++) {
      if (open[j] === 0 || isBasic[j] === 1) continue;
      let a = 0;
      let v = cost[j]!;
      for (let k = start[j]!, end = start[j + 1]!; k < end; k++) {
        const i = kind[k]!;
        const t = times[k]!;
        a += inverse[at + i]! * t;
        v -= price[i]! * t;
      }
      a *= sign;
      if (a < LEAST_PIVOT) continue;
      const ratio = Math.max(v, 0) / a;
      if (ratio < least - 1e-12 || (ratio < least + 1e-12 && a > pivot)) {
        least = ratio;
        pivot = a;
        best = j;
      }
    }
    this.work += length * 4;
    return best;
  }

  private pivot(row: number, enter: number): void {
    const { m, inverse, column, price, some, share } = this;
    const { start, kind, times } = this.columns;
    const end = start[enter + 1]!;
    let gain = this.cost[enter]!;
    for (let k = start[enter]!; k < end; k++) gain -= price[kind[k]!]! * times[k]!;
    for (let r = 0, at = 0; r < m; r++, at += m) {
      let v = 0;
      for (let k = start[enter]!; k < end; k++) v += inverse[at + kind[k]!]! * times[k]!;
      column[r] = v;
    }
    const n = pivotInverse(this, row);
    for (let k = 0; k < n; k++) price[some[k]!]! += gain * share[k]!;
    const out = this.basis[row]!;
    if (out >= 0) this.isBasic[out] = 0;
    this.basis[row] = enter;
    this.isBasic[enter] = 1;
    this.work += m * n;
  }
}
