/** Bars finer than this would make its table too large. */
export const MOST_ROOM = 1_000_000;
/** Steps of one listing. */
const MOST_STEPS = 20_000;

/** Pieces that fill a length, by kind, and what they leave over. */
export interface Filling {
  readonly kinds: readonly number[];
  readonly waste: number;
}

/** Lists the fillings of a length with pieces that are left, the longest first. */
export class FillExactly {
  work = 0;
  private readonly lengths: Int32Array;
  private readonly left: Int32Array;
  /** The first kind that is at most so long, for every length of a bar. */
  readonly from: Int32Array;

  /** Lengths are in falling order; `left` says how many of each kind there are, and may change between calls. */
  constructor(lengths: Int32Array, room: number, left: Int32Array) {
    this.lengths = lengths;
    this.left = left;
    this.from = new Int32Array(room + 1);
    let kind = lengths.length;
    for (let l = 0; l <= room; l++) {
      while (kind > 0 && lengths[kind - 1]! <= l) kind--;
      this.from[l] = kind;
    }
  }

  /** Fillings of at most `pieces` pieces that waste at most `spare`, so that no further piece would go in. */
  list(free: number, spare: number, most: number, pieces: number): Filling[] {
    const { lengths, left, from } = this;
    const found: Filling[] = [];
    const now: number[] = [];
    let steps = 0;
    const go = (first: number, open: number, depth: number): void => {
      if (open <= spare && (depth === 0 || !this.any(open))) found.push({ kinds: now.slice(), waste: open });
      if (depth === 0) return;
      for (let k = Math.max(first, from[open]!); k < lengths.length; k++) {
        if (left[k] === 0) continue;
        // So many of this length and shorter ones can't fill it any more.
        if (lengths[k]! * depth < open - spare) return;
        if (++steps > MOST_STEPS || found.length >= most) return;
        left[k]!--;
        now.push(k);
        go(k, open - lengths[k]!, depth - 1);
        now.pop();
        left[k]!++;
      }
    };
    go(0, free, pieces);
    this.work += 3 * steps + 5 * found.length + 15;
    return found;
  }

  /** Whether any piece that is left is at most so long. */
  private any(length: number): boolean {
    for (let k = this.from[length]!; k < this.lengths.length; k++) if (this.left[k]! > 0) return true;
    return false;
  }
}
