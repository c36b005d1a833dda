import type { Chance } from '../../measure/index.ts';
import { FillExactly } from './fill-exactly.ts';

/** Fillings of one bar that are tried, and the most pieces beside the longest. */
const MOST_FILLINGS = 200;
const MOST_BESIDE = 8;
/** Sets of pieces remembered as hopeless before all are forgotten. */
const MOST_REMEMBERED = 300_000;

/**
 * Puts the last pieces into the last bars by trying: the longest goes with every filling beside it that wastes no
 * more than can be spared (bin completion; R. Korf, "A new algorithm for optimal bin packing", AAAI 2002). Sets of pieces
 * that were tried in vain are remembered from one call to the next.
 */
export class FitLast {
  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly chance: Chance;
  private readonly fillings: FillExactly;
  private readonly left: Int32Array;
  /** A number of chance for every kind, and for a bar; a set is told by the sum of its numbers. */
  private readonly sign: Float64Array;
  private readonly hopeless = new Set<number>();
  private made: number[][] = [];
  private nodes = 0;

  /** Lengths are in falling order. */
  constructor(lengths: Int32Array, room: number, chance: Chance) {
    this.lengths = lengths;
    this.room = room;
    this.chance = chance;
    this.left = new Int32Array(lengths.length);
    this.fillings = new FillExactly(lengths, room, this.left);
    this.sign = Float64Array.from(
      { length: lengths.length + 1 },
      () => chance.next() * 512 + chance.below(512),
    );
  }

  get work(): number {
    return this.fillings.work;
  }

  /** Bars that hold all these pieces, each as its kinds; nothing when none was found: not all
   * fillings are looked at, and tries are counted. */
  fit(demand: Int32Array, bars: number, tries: number): number[][] | undefined {
    this.left.set(demand);
    this.made = [];
    this.nodes = tries;
    if (this.hopeless.size > MOST_REMEMBERED) this.hopeless.clear();
    let spare = bars * this.room;
    let sum = bars * this.sign[this.lengths.length]!;
    demand.forEach((d, i) => {
      spare -= d * this.lengths[i]!;
      sum += d * this.sign[i]!;
    });
    return spare >= 0 && this.next(bars, spare, sum) ? this.made : undefined;
  }

  private next(open: number, spare: number, sum: number): boolean {
    const { left, lengths, sign, chance } = this;
    let i = 0;
    while (i < left.length && left[i] === 0) i++;
    if (i === left.length) return true;
    if (open === 0 || --this.nodes < 0 || this.hopeless.has(sum)) return false;
    left[i]!--;
    const fillings = this.fillings.list(this.room - lengths[i]!, spare, MOST_FILLINGS, MOST_BESIDE);
    // Few pieces and little waste first: short pieces are of more use later.
    const order = fillings.map((f) => ({
      f,
      key: f.kinds.length + (1.5 * f.waste) / (spare + 1) + chance.share(),
    }));
    order.sort((a, b) => a.key - b.key);
    for (const { f } of order) {
      let rest = sum - sign[i]! - sign[lengths.length]!;
      for (const k of f.kinds) {
        left[k]!--;
        rest -= sign[k]!;
      }
      this.made.push([i, ...f.kinds]);
      if (this.next(open - 1, spare - f.waste, rest)) return true;
      this.made.pop();
      for (const k of f.kinds) left[k]!++;
      if (this.nodes < 0) break;
    }
    left[i]!++;
    if (this.nodes >= 0) this.hopeless.add(sum);
    return false;
  }
}
