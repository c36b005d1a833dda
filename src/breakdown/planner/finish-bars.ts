/**
 * Puts the last few pieces into a given number of bars by trying: the longest open piece goes into the next bar
 * with every filling beside it that leaves no more waste than can be spared (bin completion; R. Korf, "A new
 * algorithm for optimal bin packing", AAAI 2002). Gives the bars, or nothing when there are none or the tries
 * are used up. Lengths are in falling order.
 */
export function finishBars(
  lengths: Int32Array,
  demand: Int32Array,
  room: number,
  bars: number,
  mostTries: number,
): Int32Array[] | undefined {
  const m = lengths.length;
  const left = demand.slice();
  let total = 0;
  for (let i = 0; i < m; i++) total += left[i]! * lengths[i]!;
  if (total > bars * room) return undefined;
  const made: Int32Array[] = [];
  let tries = 0;

  const nextBar = (open: number, spare: number): boolean => {
    let i = 0;
    while (i < m && left[i] === 0) i++;
    if (i === m) return true;
    if (open === 0) return false;
    const bar = new Int32Array(m);
    bar[i] = 1;
    left[i]!--;
    made.push(bar);
    if (fill(bar, i, room - lengths[i]!, open, spare)) return true;
    made.pop();
    left[i]!++;
    return false;
  };

  /** Adds pieces from kind `from` on; the bar may be closed when what it wastes can be spared. */
  const fill = (bar: Int32Array, from: number, free: number, open: number, spare: number): boolean => {
    if (++tries > mostTries) return false;
    for (let i = from; i < m; i++) {
      if (left[i] === 0 || lengths[i]! > free) continue;
      bar[i]!++;
      left[i]!--;
      const done = fill(bar, i, free - lengths[i]!, open, spare);
      if (done) return true;
      bar[i]!--;
      left[i]!++;
      if (tries > mostTries) return false;
    }
    return free <= spare && nextBar(open - 1, spare - free);
  };

  return nextBar(bars, bars * room - total) ? made : undefined;
}
