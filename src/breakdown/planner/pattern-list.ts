/** A way to fill a bar: kinds and how often. */
export interface BarPattern {
  readonly kinds: Int32Array;
  readonly counts: Int32Array;
}

/** Patterns one after the other in flat arrays, so that all can be looked through quickly. */
export class PatternList {
  length = 0;
  /** Entries of pattern j are those from `start[j]` up to `start[j + 1]`. */
  start = new Int32Array(1024);
  kind = new Int32Array(4096);
  times = new Float64Array(4096);

  /** Adds a pattern given as how many of each kind; gives its place. */
  add(counts: Int32Array): number {
    let end = this.start[this.length]!;
    if (end + counts.length > this.kind.length) {
      this.kind = grown(this.kind, new Int32Array(2 * (end + counts.length)));
      this.times = grown(this.times, new Float64Array(2 * (end + counts.length)));
    }
    for (let i = 0; i < counts.length; i++)
      if (counts[i]! > 0) {
        this.kind[end] = i;
        this.times[end++] = counts[i]!;
      }
    if (this.length + 2 > this.start.length)
      this.start = grown(this.start, new Int32Array(2 * this.start.length));
    this.start[++this.length] = end;
    return this.length - 1;
  }

  /** Becomes a copy of another list. */
  copyFrom(other: PatternList): void {
    this.length = other.length;
    this.start = other.start.slice();
    this.kind = other.kind.slice();
    this.times = other.times.slice();
  }

  /** Pattern j on its own. */
  at(j: number): BarPattern {
    const from = this.start[j]!;
    const to = this.start[j + 1]!;
    return { kinds: this.kind.slice(from, to), counts: Int32Array.from(this.times.subarray(from, to)) };
  }

  /** What pattern j is worth when every kind is worth so much. */
  worth(j: number, each: Float64Array): number {
    let sum = 0;
    for (let k = this.start[j]!, end = this.start[j + 1]!; k < end; k++)
      sum += each[this.kind[k]!]! * this.times[k]!;
    return sum;
  }
}

function grown<T extends Int32Array | Float64Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
