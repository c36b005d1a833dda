/** Entries of the inverse below this are rounding. */
const TINY = 1e-12;

/** A basis by its dense inverse, row by row, the values of what is in it, and room to work in. */
export interface DenseBasis {
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  /** The entering column in terms of the basis. */
  readonly column: Float64Array;
  /** Left by a pivot: places where the pivot's row is not nothing, and its entries there. */
  readonly some: Int32Array;
  readonly share: Float64Array;
}

/** Brings the column into the basis in place of a row; gives how many entries of that row are not nothing. */
export function pivotInverse({ inverse, x, column, some, share }: DenseBasis, row: number): number {
  const m = x.length;
  const u = column[row]!;
  const at = row * m;
  // Most of the row is often nothing.
  let n = 0;
  for (let i = 0; i < m; i++) {
    const v = inverse[at + i]!;
    if (v < TINY && v > -TINY) {
      inverse[at + i] = 0;
      continue;
    }
    inverse[at + i] = v / u;
    share[n] = inverse[at + i]!;
    some[n++] = i;
  }
  const t = x[row]! / u;
  for (let r = 0; r < m; r++) {
    if (r === row) continue;
    const c = column[r]!;
    if (c < TINY && c > -TINY) continue;
    x[r]! -= c * t;
    const to = r * m;
    for (let k = 0; k < n; k++) inverse[to + some[k]!]! -= c * share[k]!;
  }
  x[row] = t;
  return n;
}
