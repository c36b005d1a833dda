/** How often an error was the largest on the side to which a fit failed. */
export interface Blame {
  readonly error: string;
  readonly name: string;
  /** Fits that it spoiled, over all builds. */
  readonly spoiled: number;
}

/** Notes the error that did most to close a gap (side -1) or to open it (side 1). */
export function blamed(
  blame: Float64Array,
  { at, weight }: { readonly at: Int32Array; readonly weight: Float64Array },
  error: Float64Array,
  side: -1 | 1,
): void {
  let most = 0;
  let worst = -1;
  for (let t = 0; t < at.length; t++) {
    const moved = weight[t]! * error[at[t]!]! * side;
    if (moved > most) {
      most = moved;
      worst = at[t]!;
    }
  }
  if (worst >= 0) blame[worst]!++;
}
