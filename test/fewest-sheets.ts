/**
 * The fewest sheets for a handful of pieces, by trying everything: which sets of pieces one sheet can hold is
 * found by cutting it in two at every place in both directions. Kerf is folded into the sizes.
 */
export function fewestSheets(
  length: number,
  width: number,
  pieces: readonly (readonly number[])[],
  turn: boolean,
): number {
  const all = (1 << pieces.length) - 1;
  const known = new Map<string, boolean>();

  const holds = (l: number, w: number, set: number): boolean => {
    if (set === 0) return true;
    const key = `${l} ${w} ${set}`;
    const seen = known.get(key);
    if (seen !== undefined) return seen;
    let area = 0;
    for (let i = 0; i < pieces.length; i++) if (set & (1 << i)) area += pieces[i]![0]! * pieces[i]![1]!;
    let ok = false;
    if (area <= l * w) {
      if ((set & (set - 1)) === 0) {
        const [a, b] = pieces[31 - Math.clz32(set)]! as [number, number];
        ok = (a <= l && b <= w) || (turn && b <= l && a <= w);
      }
      for (let part = (set - 1) & set; part > 0 && !ok; part = (part - 1) & set) {
        for (let x = 1; x < l && !ok; x++) ok = holds(x, w, part) && holds(l - x, w, set ^ part);
        for (let y = 1; y < w && !ok; y++) ok = holds(l, y, part) && holds(l, w - y, set ^ part);
      }
    }
    known.set(key, ok);
    return ok;
  };

  const best = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  best[0] = 0;
  for (let set = 1; set <= all; set++)
    for (let part = set; part > 0; part = (part - 1) & set)
      if (best[set ^ part]! + 1 < best[set]! && holds(length, width, part)) best[set] = best[set ^ part]! + 1;
  return best[all]!;
}
