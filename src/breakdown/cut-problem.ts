import type { Ticks } from '../measure/index.ts';

/** Stock of one size. Length runs along the grain. */
export interface CutStock {
  readonly id: string;
  readonly length: Ticks;
  /** Absent in one-dimensional work (strips, bars). */
  readonly width?: Ticks;
  /** How many there are; absent: as many as are bought. */
  readonly count?: number;
  /** What one costs, in whole money units of any size. Stock on the rack costs less than stock to buy. */
  readonly cost: number;
  /** Taken off every side before anything else is cut, its own kerf included. */
  readonly trim: Ticks;
}

/** Pieces to cut, all alike. */
export interface CutPiece {
  readonly id: string;
  readonly length: Ticks;
  readonly width?: Ticks;
  readonly count: number;
  /** Whether it may lie across the grain. */
  readonly turn: boolean;
}

/** What is to be cut from what: one lot, one kerf. Everything two-dimensional or everything one-dimensional. */
export interface CutProblem {
  readonly kerf: Ticks;
  readonly stock: readonly CutStock[];
  readonly pieces: readonly CutPiece[];
  /**
   * How many of the whole cost units above make one unit of the file the problem came from: 1 (or absent), 10,
   * 100, 1000 or 10000. It lets prices with decimals be added exactly.
   */
  readonly costScale?: number;
}
