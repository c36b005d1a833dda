import type { BarsFound } from './bars-found.ts';

/** Longest pieces first, each in the fullest bar that still holds it. */
export function bestFit(lengths: Int32Array, demand: Int32Array, room: number): BarsFound {
  const order = [...lengths.keys()].sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const bars: { counts: Int32Array; times: number }[] = [];
  const left: number[] = [];
  for (const i of order)
    for (let c = 0; c < demand[i]!; c++) {
      let at = -1;
      for (let b = 0; b < bars.length; b++)
        if (left[b]! >= lengths[i]! && (at < 0 || left[b]! < left[at]!)) at = b;
      if (at < 0) {
        at = bars.length;
        bars.push({ counts: new Int32Array(lengths.length), times: 1 });
        left.push(room);
      }
      bars[at]!.counts[i]!++;
      left[at]! -= lengths[i]!;
    }
  return { bars, total: bars.length };
}
