/** Bars found: patterns (how many of each kind) and how often each is cut. */
export interface BarsFound {
  readonly bars: readonly { readonly counts: Int32Array; readonly times: number }[];
  readonly total: number;
}
