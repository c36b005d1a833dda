/** Where a figure was taken from. Every row of every table here says so. */
export interface Sourced {
  /** A publication with its table or section, "common practice", or "from memory". */
  readonly source: string;
  /** Whether the figure was read in the source or a restatement of it (false: from memory). */
  readonly confirmed: boolean;
}

/** The lowest and the highest usual value. */
export type Range = readonly [least: number, greatest: number];
