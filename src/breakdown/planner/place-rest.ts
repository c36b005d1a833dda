/**
 * Puts the pieces that no bar holds yet into the bars, the longest first and each where least is left over. False when
 * one finds no room. Lengths are in falling order.
 */
export function placeRest(
  lengths: Int32Array,
  demand: Int32Array,
  room: number,
  bars: readonly Int32Array[],
): boolean {
  const free = bars.map((counts) => room - counts.reduce((a, c, i) => a + c * lengths[i]!, 0));
  for (let i = 0; i < lengths.length; i++) {
    const held = bars.reduce((a, counts) => a + counts[i]!, 0);
    for (let c = held; c < demand[i]!; c++) {
      let at = -1;
      for (let b = 0; b < free.length; b++)
        if (free[b]! >= lengths[i]! && (at < 0 || free[b]! < free[at]!)) at = b;
      if (at < 0) return false;
      free[at]! -= lengths[i]!;
      bars[at]![i]!++;
    }
  }
  return true;
}
