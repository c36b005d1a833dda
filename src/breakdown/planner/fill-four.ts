/** Steps after which a filling is given up. */
const MOST_STEPS = 4_000_000;

/**
 * Fills one bar with the pieces that are worth most together, where no bar holds more than four and lengths are so
 * fine that a table would be too large: the four are two pairs, and of every pair the best partner is sought
 * among those that still go in (after E. Horowitz and S. Sahni, "Computing partitions with applications to the
 * knapsack problem", J. of the ACM 21, 1974). Results are left in `count` and `value`.
 */
export class FillFour {
  readonly count: Int32Array;
  value = 0;
  work = 0;
  private readonly room: number;
  /** Pairs in the order of length; the kind that stands after the last one is no piece at all. */
  private readonly first: Int32Array;
  private readonly second: Int32Array;
  private readonly length: Int32Array;
  private readonly worthOf: Float64Array;
  /** Of the pairs up to here, the one worth most. */
  private readonly bestUpTo: Int32Array;

  constructor(lengths: Int32Array, room: number) {
    const none = lengths.length;
    this.room = room;
    this.count = new Int32Array(none);
    const of = (i: number) => (i === none ? 0 : lengths[i]!);
    // Length and pair in one number, so that sorting is quick.
    const base = none + 1;
    const keys = new Float64Array((base * (base + 1)) / 2);
    let n = 0;
    for (let a = 0; a <= none; a++)
      for (let b = a; b <= none; b++)
        if (of(a) + of(b) <= room) keys[n++] = (of(a) + of(b)) * base * base + a * base + b;
    const pairs = keys.subarray(0, n).sort();
    this.first = Int32Array.from(pairs, (p) => Math.floor((p % (base * base)) / base));
    this.second = Int32Array.from(pairs, (p) => p % base);
    this.length = Int32Array.from(pairs, (p) => Math.floor(p / (base * base)));
    this.worthOf = new Float64Array(pairs.length);
    this.bestUpTo = new Int32Array(pairs.length);
  }

  /** False when the search was given up: then the filling is good, but may not be the best. */
  solve(worth: Float64Array, most: Int32Array): boolean {
    const { first, second, length, worthOf, bestUpTo, room } = this;
    const none = this.count.length;
    const n = length.length;
    let top = 0;
    for (let p = 0; p < n; p++) {
      const a = first[p]!;
      const b = second[p]!;
      const able =
        (a === none || most[a]! > 0) &&
        (b === none || most[b]! > 0) &&
        (a !== b || a === none || most[a]! > 1);
      worthOf[p] = able
        ? (a === none ? 0 : worth[a]!) + (b === none ? 0 : worth[b]!)
        : Number.NEGATIVE_INFINITY;
      if (worthOf[p]! > worthOf[top]!) top = p;
      bestUpTo[p] = top;
    }
    let best = 0;
    let one = 0;
    let other = 0;
    let steps = 2 * n;
    let limit = n - 1;
    for (let p = 0; p < n; p++) {
      while (limit >= 0 && length[limit]! > room - length[p]!) limit--;
      if (limit < p) break;
      const value = worthOf[p]!;
      if (value + worthOf[bestUpTo[limit]!]! <= best + 1e-10) continue;
      // The best partner may use a piece that there is no more of: then the next best, down the list.
      for (let q = limit; q >= 0; q--) {
        if (++steps > MOST_STEPS) break;
        const up = bestUpTo[q]!;
        if (value + worthOf[up]! <= best + 1e-10) break;
        if (this.together(p, up, most)) q = up;
        if (value + worthOf[q]! > best + 1e-10 && this.together(p, q, most)) {
          best = value + worthOf[q]!;
          one = p;
          other = q;
        }
      }
    }
    this.work += steps;
    this.count.fill(0);
    this.value = 0;
    for (const i of [first[one]!, second[one]!, first[other]!, second[other]!])
      if (i !== none) {
        this.count[i]!++;
        this.value += worth[i]!;
      }
    return steps <= MOST_STEPS;
  }

  /** Whether there are pieces enough for both pairs. */
  private together(p: number, q: number, most: Int32Array): boolean {
    const none = this.count.length;
    const four = [this.first[p]!, this.second[p]!, this.first[q]!, this.second[q]!];
    return four.every((i) => i === none || four.filter((j) => j === i).length <= most[i]!);
  }
}
