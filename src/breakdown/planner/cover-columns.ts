import { PatternList } from './pattern-list.ts';

/** Entries of the table below; with longer bars its lengths are taken more roughly. */
const MOST_ENTRIES = 1_000_000;
/** Steps of one listing. */
const MOST_STEPS = 2_000_000;

/** Fillings of a bar, and the kinds they are made of. */
export interface CoverColumns {
  /** The kinds that are covered, by their places among all. */
  readonly kinds: Int32Array;
  /** Fillings, by the kinds’ places among those above. */
  readonly columns: PatternList;
}

/** What fillings are listed of: pieces with a worth each, which no filling of a bar exceeds 1 by. */
export interface CoverPieces {
  readonly lengths: Int32Array;
  readonly demand: Int32Array;
  readonly room: number;
  readonly worth: Float64Array;
}

/** Lists the fillings of a bar with these kinds of pieces that are worth a bar but for little. */
export class CoverListing {
  work = 0;
  readonly kinds: Int32Array;
  private readonly pieces: CoverPieces;
  /** The most that kinds from the k-th on are worth in so many grains of a bar: `table[k * width + grains]`. */
  private readonly table: Float64Array;
  private readonly width: number;
  private readonly grain: number;

  constructor(pieces: CoverPieces, kinds: Int32Array) {
    this.pieces = pieces;
    this.kinds = kinds;
    const { lengths, demand, room, worth } = pieces;
    const n = kinds.length;
    // Lengths rounded down fit where the true ones do, so that the table never says too little.
    this.grain = Math.ceil(((n + 1) * (room + 1)) / MOST_ENTRIES);
    this.width = Math.floor(room / this.grain) + 1;
    const { grain, width } = this;
    this.table = new Float64Array((n + 1) * width);
    for (let k = n - 1; k >= 0; k--) {
      const i = kinds[k]!;
      const [length, count, value] = [Math.floor(lengths[i]! / grain), demand[i]!, worth[i]!];
      const [here, next] = [k * width, (k + 1) * width];
      for (let r = 0; r < width; r++) {
        let best = this.table[next + r]!;
        for (let c = 1, at = r - length; c <= count && at >= 0; c++, at -= length) {
          const v = c * value + this.table[next + at]!;
          if (v > best) best = v;
        }
        this.table[here + r] = best;
      }
    }
    this.work += 2 * n * width;
  }

  /** All fillings that fall short of a bar’s worth by at most `short`; undefined when they are more than `most`. */
  within(short: number, most: number): CoverColumns | undefined {
    const { kinds, table, width, grain, pieces } = this;
    const { lengths, demand, room, worth } = pieces;
    const n = kinds.length;
    const columns = new PatternList();
    const counts = new Int32Array(n);
    const least = 1 - short;
    let steps = 0;
    const go = (k: number, free: number, value: number): boolean => {
      if (++steps > MOST_STEPS) return false;
      if (k === n) {
        if (columns.length >= most) return false;
        columns.add(counts);
        return true;
      }
      const i = kinds[k]!;
      const length = lengths[i]!;
      for (let c = Math.min(demand[i]!, Math.floor(free / length)); c >= 0; c--) {
        const left = free - c * length;
        const reached = value + c * worth[i]!;
        if (reached + table[(k + 1) * width + Math.floor(left / grain)]! < least) continue;
        counts[k] = c;
        if (!go(k + 1, left, reached)) return false;
      }
      counts[k] = 0;
      return true;
    };
    const all = go(0, room, 0);
    this.work += 4 * steps;
    return all ? { kinds, columns } : undefined;
  }
}
