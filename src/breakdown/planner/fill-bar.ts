/** Bars are filled by a table if it has at most so many entries (kinds times length), else by branching. */
export const MOST_ENTRIES = 4e6;
/** Branches looked at before a filling is given up. */
const MOST_BRANCHES = 300_000;

/**
 * Fills one bar with the pieces that are worth most together, each at most so often (a bounded knapsack).
 * Results are left in `count` and `value`.
 */
export class FillBar {
  /** How many of each kind are in the best filling. */
  readonly count: Int32Array;
  value = 0;
  /** Steps taken so far. */
  work = 0;

  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly best: Float64Array;
  private readonly taken: Uint16Array;
  private readonly order: Int32Array;

  constructor(lengths: Int32Array, room: number) {
    const m = lengths.length;
    this.lengths = lengths;
    this.room = room;
    this.count = new Int32Array(m);
    this.order = new Int32Array(m);
    const table = m * (room + 1) <= MOST_ENTRIES;
    this.best = new Float64Array(table ? room + 1 : 0);
    this.taken = new Uint16Array(table ? m * (room + 1) : 0);
  }

  /** False when the search was given up: then the filling is good, but may not be the best. */
  solve(worth: Float64Array, most: Int32Array): boolean {
    this.count.fill(0);
    this.value = 0;
    let n = 0;
    for (let i = 0; i < worth.length; i++)
      if (worth[i]! > 1e-9 && most[i]! > 0 && this.lengths[i]! <= this.room) this.order[n++] = i;
    if (this.best.length > 0) {
      this.byTable(worth, most, n);
      return true;
    }
    return this.byBranching(worth, most, n);
  }

  private byTable(worth: Float64Array, most: Int32Array, n: number): void {
    const { best, taken, room } = this;
    best.fill(0);
    for (let k = 0; k < n; k++) {
      const i = this.order[k]!;
      const l = this.lengths[i]!;
      const v = worth[i]!;
      const row = k * (room + 1);
      taken.fill(0, row, row + room + 1);
      const times = Math.min(most[i]!, Math.floor(room / l));
      this.work += (Math.floor(room / l) <= most[i]! ? 1 : times) * room;
      if (Math.floor(room / l) <= most[i]!) {
        // As often as it goes in: one pass upward, with the count carried along.
        for (let w = l; w <= room; w++) {
          const x = best[w - l]! + v;
          if (x > best[w]! + 1e-12) {
            best[w] = x;
            taken[row + w] = taken[row + w - l]! + 1;
          }
        }
        continue;
      }
      for (let t = 0; t < times; t++)
        for (let w = room; w >= l; w--) {
          const x = best[w - l]! + v;
          if (x > best[w]! + 1e-12) {
            best[w] = x;
            taken[row + w] = taken[row + w - l]! + 1;
          }
        }
    }
    let w = room;
    for (let k = n - 1; k >= 0; k--) {
      const i = this.order[k]!;
      const c = taken[k * (room + 1) + w]!;
      this.count[i] = c;
      this.value += c * worth[i]!;
      w -= c * this.lengths[i]!;
    }
  }

  private byBranching(worth: Float64Array, most: Int32Array, n: number): boolean {
    const { lengths, room } = this;
    const order = [...this.order.subarray(0, n)].sort(
      (a, b) => worth[b]! / lengths[b]! - worth[a]! / lengths[a]! || a - b,
    );
    const now = new Int32Array(n);
    const bestNow = new Int32Array(n);
    const shortest = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
    for (let k = n - 1; k >= 0; k--) shortest[k] = Math.min(shortest[k + 1]!, lengths[order[k]!]!);
    let branches = 0;
    const go = (k: number, left: number, value: number): void => {
      if (value > this.value + 1e-12) {
        this.value = value;
        bestNow.set(now);
      }
      if (k === n || left < shortest[k]! || ++branches > MOST_BRANCHES) return;
      const i = order[k]!;
      if (value + (left * worth[i]!) / lengths[i]! <= this.value + 1e-9) return;
      for (let c = Math.min(most[i]!, Math.floor(left / lengths[i]!)); c >= 0; c--) {
        now[k] = c;
        go(k + 1, left - c * lengths[i]!, value + c * worth[i]!);
      }
      now[k] = 0;
    };
    go(0, room, 0);
    this.work += branches * 4;
    for (let k = 0; k < n; k++) this.count[order[k]!] = bestNow[k]!;
    return branches <= MOST_BRANCHES;
  }
}
