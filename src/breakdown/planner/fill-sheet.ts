import type { KeptNode } from './kept-sheet.ts';
import { lies, type ScaledKind, type ScaledStock } from './scaled-problem.ts';
import { ACROSS, ALONG, LEAF } from './sheet-trees.ts';

/** Steps of one filling above which fewer sizes are looked at, and above which a sheet is not filled this way. */
const MANY_STEPS = 1e6;
const MOST_STEPS = 4e6;
/** Sums of sizes looked at before they are too many. */
const MOST_SUMS = 300_000;
const TINY = 1e-9;

/**
 * Fills one sheet with the pieces that are worth most together, by straight through-cuts in any number of stages: the best
 * of every smaller sheet is known before the larger one's (P. Gilmore and R. Gomory, "Multistage cutting stock problems
 * of two and more dimensions", Operations Research 13, 1965), for the sizes alone that pieces one after the other may make
 * (normal patterns; J. Herz, "Recursive computational procedure for two-dimensional stock cutting", IBM J. of Research and
 * Development 16, 1972). Kinds may be laid more often than
 * there are pieces of them. Results are left in `count`, `value` and `tree`.
 */
export class FillSheet {
  readonly count: Int32Array;
  /** What the filling is worth; none is worth more, unless there were too many sizes to look at all. */
  value = 0;
  tree: KeptNode | undefined;
  work = 0;
  /** Steps of one filling. */
  readonly steps: number;
  readonly able: boolean;
  /** Trees of the patterns that were kept. */
  readonly trees: KeptNode[] = [];
  private readonly kinds: readonly ScaledKind[];
  private readonly xs: Int32Array;
  private readonly ys: Int32Array;
  /** By two places k and a, `a * size + k`: the place of the greatest size that is not above what k leaves of a. */
  private readonly xRest: Int32Array;
  private readonly yRest: Int32Array;
  private readonly best: Float64Array;
  /** How the best is made: a piece as -2 - 2 * kind - turned, a cut along the length at k as 2k, across it as 2k + 1, -1 for nothing. */
  private readonly made: Int32Array;

  constructor(kinds: readonly ScaledKind[], stock: ScaledStock) {
    this.kinds = kinds;
    this.count = new Int32Array(kinds.length);
    const along = sizesOf(kinds, stock.length, 'length');
    const across = sizesOf(kinds, stock.width, 'width');
    const many = stepsOf(along, across) > MANY_STEPS;
    const [xs, ys] = many ? [fewer(along, kinds, 'length'), fewer(across, kinds, 'width')] : [along, across];
    this.steps = stepsOf(xs, ys);
    this.able =
      xs.length > 0 && ys.length > 0 && this.steps <= MOST_STEPS && kinds.every((k) => lies(k, stock));
    this.xs = this.able ? xs : new Int32Array(0);
    this.ys = this.able ? ys : new Int32Array(0);
    this.xRest = restsOf(this.xs);
    this.yRest = restsOf(this.ys);
    this.best = new Float64Array(this.xs.length * this.ys.length);
    this.made = new Int32Array(this.best.length);
  }

  solve(worth: Float64Array, most: Int32Array): boolean {
    const { xs, ys, best, made } = this;
    const m = ys.length;
    best.fill(0);
    made.fill(-1);
    this.kinds.forEach((k, i) => {
      if (worth[i]! <= TINY || most[i]! === 0) return;
      for (const turned of k.turn ? [0, 1] : [0]) {
        const [l, w] = turned === 1 ? [k.width, k.length] : [k.length, k.width];
        for (let a = 0; a < xs.length; a++) {
          if (xs[a]! < l) continue;
          for (let b = 0; b < m; b++)
            if (ys[b]! >= w && worth[i]! > best[a * m + b]!) {
              best[a * m + b] = worth[i]!;
              made[a * m + b] = -2 - 2 * i - turned;
            }
        }
      }
    });
    for (let a = 0; a < xs.length; a++) for (let b = 0; b < m; b++) this.cut(a, b);
    this.work += this.steps;
    this.count.fill(0);
    const top = best.length - 1;
    this.value = best[top]!;
    this.tree = this.draw(xs.length - 1, m - 1);
    return true;
  }

  keep(pattern: number, tree = this.tree!): void {
    this.trees[pattern] = tree;
  }

  /** The best cut of one size, if it gives more than one piece does. */
  private cut(a: number, b: number): void {
    const { xs, ys, xRest, yRest, best, made } = this;
    const [n, m] = [xs.length, ys.length];
    const at = a * m + b;
    let value = best[at]!;
    let how = made[at]!;
    for (let k = 0; 2 * xs[k]! <= xs[a]! && k < a; k++) {
      const v = best[k * m + b]! + best[xRest[a * n + k]! * m + b]!;
      if (v > value + TINY) {
        value = v;
        how = 2 * k;
      }
    }
    const row = a * m;
    for (let k = 0; 2 * ys[k]! <= ys[b]! && k < b; k++) {
      const v = best[row + k]! + best[row + yRest[b * m + k]!]!;
      if (v > value + TINY) {
        value = v;
        how = 2 * k + 1;
      }
    }
    best[at] = value;
    made[at] = how;
  }

  /** The tree of a size; undefined when nothing is in it. */
  private draw(a: number, b: number): KeptNode | undefined {
    const how = this.made[a * this.ys.length + b]!;
    if (how === -1) return undefined;
    if (how < -1) {
      const kind = (-2 - how) >> 1;
      this.count[kind]!++;
      const turned = (-2 - how) % 2 === 1;
      const { length, width } = this.kinds[kind]!;
      const [l, w] = turned ? [width, length] : [length, width];
      return { side: LEAF, parts: [], kind, turned, length: l, width: w };
    }
    const k = how >> 1;
    const along = how % 2 === 0;
    const rest = along ? this.xRest[a * this.xs.length + k]! : this.yRest[b * this.ys.length + k]!;
    const parts = along ? [this.draw(k, b), this.draw(rest, b)] : [this.draw(a, k), this.draw(a, rest)];
    return joined(
      parts.filter((p) => p !== undefined),
      along ? ALONG : ACROSS,
    );
  }
}

/** As many of a kind as are asked for, one at least, and go on a sheet in rows, turned if that holds more. */
export function rowsOf(
  kind: number,
  { length, width, count: asked, turn }: ScaledKind,
  stock: ScaledStock,
): KeptNode {
  // Of a problem with very many pieces some kinds may have been cut already.
  const count = Math.max(1, asked);
  const ways = (turn ? [false, true] : [false]).map((turned) => {
    const [l, w] = turned ? [width, length] : [length, width];
    const along = Math.min(count, Math.floor(stock.length / l));
    return { turned, l, w, along, across: Math.min(Math.ceil(count / along), Math.floor(stock.width / w)) };
  });
  const { turned, l, w, along, across } = ways.reduce((a, b) =>
    b.along * b.across > a.along * a.across ? b : a,
  );
  const leaf: KeptNode = { side: LEAF, parts: [], kind, turned, length: l, width: w };
  const row = joined(new Array<KeptNode>(along).fill(leaf), ALONG)!;
  return joined(new Array<KeptNode>(across).fill(row), ACROSS)!;
}

/** Parts one after the other as one node; those that are joined the same way become one row. */
export function joined(parts: readonly KeptNode[], side: number): KeptNode | undefined {
  if (parts.length < 2) return parts[0];
  const rows = parts.flatMap((p) => (p.side === side ? p.parts : [p]));
  const sum = (of: 'length' | 'width') => rows.reduce((a, p) => a + p[of], 0);
  const most = (of: 'length' | 'width') => Math.max(...rows.map((p) => p[of]));
  return {
    side,
    parts: rows,
    kind: -1,
    turned: false,
    length: side === ALONG ? sum('length') : most('length'),
    width: side === ALONG ? most('width') : sum('width'),
  };
}

/** The sizes that pieces one after the other may make, and the whole, in rising order; none when they are too many. */
function sizesOf(kinds: readonly ScaledKind[], room: number, of: 'length' | 'width'): Int32Array {
  let sizes = [0];
  let sums = 0;
  for (const k of kinds)
    for (const size of k.turn ? [k.length, k.width] : [k[of]])
      for (let c = 0; c < Math.min(k.count, Math.floor(room / size)); c++) {
        const before = sizes.length;
        sizes = merged(sizes, size, room);
        sums += sizes.length;
        if (sums > MOST_SUMS) return new Int32Array(0);
        if (sizes.length === before) break;
      }
  if (sizes.at(-1)! < room) sizes.push(room);
  return Int32Array.from(sizes);
}

/** Sizes, and all of them with one more piece that still go in, each once. */
function merged(sizes: readonly number[], piece: number, room: number): number[] {
  const all: number[] = [];
  let k = 0;
  for (const size of sizes) {
    for (; k < sizes.length && sizes[k]! + piece < size; k++) all.push(sizes[k]! + piece);
    if (k < sizes.length && sizes[k]! + piece === size) k++;
    all.push(size);
  }
  for (; k < sizes.length && sizes[k]! + piece <= room; k++) all.push(sizes[k]! + piece);
  return all;
}

/**
 * Of many sizes, the pieces' own and those that another size leaves of the whole (raster points; J. Terno, R. Lindemann
 * and G. Scheithauer, "Zuschnittprobleme und ihre praktische Loesung", 1987).
 */
function fewer(sizes: Int32Array, kinds: readonly ScaledKind[], of: 'length' | 'width'): Int32Array {
  const room = sizes.at(-1)!;
  const points = new Set<number>([0, room]);
  for (const k of kinds)
    for (const size of k.turn ? [k.length, k.width] : [k[of]]) if (size <= room) points.add(size);
  let at = sizes.length - 1;
  for (const size of sizes) {
    while (sizes[at]! > room - size) at--;
    points.add(sizes[at]!);
  }
  return Int32Array.from(points).sort();
}

function restsOf(sizes: Int32Array): Int32Array {
  const n = sizes.length;
  const rests = new Int32Array(n * n);
  for (let a = 0; a < n; a++)
    for (let k = 0, at = a; k <= a; k++) {
      while (sizes[at]! > sizes[a]! - sizes[k]!) at--;
      rests[a * n + k] = at;
    }
  return rests;
}

function stepsOf(xs: Int32Array, ys: Int32Array): number {
  return (xs.length * ys.length * (xs.length + ys.length)) / 4;
}
