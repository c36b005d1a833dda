import type { Chance } from '../../measure/index.ts';

/** So many refills back it is looked whether the result is no worse. */
const HISTORY = 50;

/**
 * Tries to bring all pieces into a given number of bars: takes a few bars and the pieces that have no place,
 * fills these bars again as full as can be from what was taken (subset sums, in an order of chance), and keeps
 * the result by late acceptance. What counts is the length without a place, less the squares of what the bars
 * waste: waste that gathers in one bar becomes room for a piece (after the measure of E. Falkenauer, "A hybrid
 * grouping genetic algorithm for bin packing", J. of Heuristics 2, 1996).
 */
export class RefillBars {
  /** Pieces of each bar, and those without a place, by kind. */
  readonly bars: number[][];
  loose: number[];
  work = 0;
  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly chance: Chance;
  private readonly reached: Int32Array;
  private readonly late: Float64Array;
  private lateAt = 0;
  private gathered = 0;
  private energy: number;

  /** Starts with empty bars. Pieces are given by kind, one entry each. */
  constructor(lengths: Int32Array, room: number, bars: number, pieces: Iterable<number>, chance: Chance) {
    this.lengths = lengths;
    this.room = room;
    this.bars = Array.from({ length: bars }, () => []);
    this.loose = [...pieces];
    this.chance = chance;
    this.reached = new Int32Array(room + 1);
    let length = 0;
    for (const i of this.loose) length += lengths[i]!;
    this.gathered = bars * room * room;
    this.energy = length - this.gathered / room;
    this.late = new Float64Array(HISTORY).fill(this.energy);
  }

  private waste(bar: readonly number[]): number {
    let free = this.room;
    for (const i of bar) free -= this.lengths[i]!;
    return free;
  }

  /** One refill; true when every piece has a place. */
  improve(): boolean {
    const { chance, bars, lengths } = this;
    const many = 1 + chance.below(3);
    const taken = new Set<number>();
    for (let t = 0; t < many; t++) taken.add(chance.below(bars.length));
    let pool = [...this.loose];
    for (const b of taken) pool.push(...bars[b]!);
    const byLength = chance.below(3) === 0;
    const key = pool.map((i) => (byLength ? lengths[i]! * (0.8 + 0.4 * chance.share()) : chance.share()));
    const order = pool.map((_, at) => at).sort((a, b) => key[b]! - key[a]!);
    pool = order.map((at) => pool[at]!);
    const filled: number[][] = [];
    for (let t = 0; t < taken.size; t++) {
      const bar = this.fullest(pool);
      filled.push(bar.map((at) => pool[at]!));
      const gone = new Set(bar);
      pool = pool.filter((_, at) => !gone.has(at));
    }
    let length = 0;
    for (const i of pool) length += lengths[i]!;
    let gathered = this.gathered;
    for (const b of taken) gathered -= this.waste(bars[b]!) ** 2;
    for (const bar of filled) gathered += this.waste(bar) ** 2;
    const energy = length - gathered / this.room;
    if (energy <= this.late[this.lateAt]! || energy <= this.energy) {
      this.energy = energy;
      this.gathered = gathered;
      let at = 0;
      for (const b of taken) bars[b] = filled[at++]!;
      this.loose = pool;
    }
    this.late[this.lateAt] = this.energy;
    this.lateAt = (this.lateAt + 1) % HISTORY;
    return this.loose.length === 0;
  }

  /** Places in the pool of the pieces that fill a bar most. */
  private fullest(pool: readonly number[]): number[] {
    const { reached, room, lengths } = this;
    reached.fill(0);
    let top = 0;
    for (let at = 0; at < pool.length; at++) {
      const l = lengths[pool[at]!]!;
      if (l <= room && reached[l] === 0 && top < l) top = l;
      for (let w = Math.min(room, top + l); w > l; w--)
        if (reached[w] === 0 && reached[w - l] !== 0) {
          reached[w] = at + 1;
          if (w > top) top = w;
        }
      if (l <= room && reached[l] === 0) reached[l] = at + 1;
      if (top === room) break;
    }
    this.work += pool.length * (room / 3 + 30);
    let w = room;
    while (w > 0 && reached[w] === 0) w--;
    const bar: number[] = [];
    while (w > 0) {
      const at = reached[w]! - 1;
      bar.push(at);
      w -= lengths[pool[at]!]!;
    }
    return bar;
  }
}
