/** How much of one resource is in use from moment to moment. */
export class ResourceUse {
  /** Moments at which the use changes; `used[i]` holds from `at[i]` to `at[i + 1]`. */
  private readonly at: number[] = [0];
  private readonly used: number[] = [0];
  private readonly there: number;

  constructor(there: number) {
    this.there = there;
  }

  /** Where, within a span, so much more can’t be had: the end of the last such stretch. */
  lackingUntil(from: number, to: number, amount: number): number | undefined {
    if (amount === 0 || to <= from) return undefined;
    for (let i = this.indexBefore(to); i >= 0 && (this.at[i + 1] ?? Infinity) > from; i--)
      if (this.used[i]! + amount > this.there) return this.at[i + 1] ?? Infinity;
    return undefined;
  }

  /** Where, within a span, so much more can’t be had: the start of the first such stretch. */
  lackingFrom(from: number, to: number, amount: number): number | undefined {
    if (amount === 0 || to <= from) return undefined;
    let i = this.indexBefore(to);
    let first: number | undefined;
    for (; i >= 0 && (this.at[i + 1] ?? Infinity) > from; i--)
      if (this.used[i]! + amount > this.there) first = this.at[i]!;
    return first;
  }

  /** Takes so much (or gives it back, when less than nothing) over a span. */
  take(from: number, to: number, amount: number): void {
    if (amount === 0 || to <= from) return;
    const first = this.split(from);
    const last = this.split(to);
    for (let i = first; i < last; i++) this.used[i]! += amount;
  }

  /** The last stretch that begins before a moment. */
  private indexBefore(moment: number): number {
    let [low, high] = [0, this.at.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.at[middle]! < moment) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  private split(moment: number): number {
    const i = this.indexBefore(moment) + 1;
    if (this.at[i] === moment) return i;
    this.at.splice(i, 0, moment);
    this.used.splice(i, 0, this.used[i - 1] ?? 0);
    return i;
  }
}
