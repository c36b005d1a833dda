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
  /** Which way its grain runs; absent: along its length. */
  readonly grain?: 'along' | 'across' | 'free';
  /** How many of its faces are good enough to be seen; absent: 2. */
  readonly faces?: number;
  /** Areas that no piece may touch: voids, patches, dents, knots. In the sheet's coordinates; a bar has no y or width. */
  readonly flaws?: readonly Flaw[];
  /** Whether it is bought at the yard, where it may be cut roughly and from where it must travel. */
  readonly yard?: boolean;
}

/** A forbidden area of a sheet, board or bar. */
export interface Flaw {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly length: Ticks;
  readonly width: Ticks;
}

/** Pieces to cut, all alike. */
export interface CutPiece {
  readonly id: string;
  readonly length: Ticks;
  readonly width?: Ticks;
  readonly count: number;
  /** Whether it may lie across the grain. */
  readonly turn: boolean;
  /** Set when its length must lie across the grain. */
  readonly across?: boolean;
  /** How many good faces its stock must have; absent: none. */
  readonly faces?: number;
  /** Cut so much larger, because it is cut to fit later; absent: nothing. */
  readonly allowance?: { readonly length: Ticks; readonly width: Ticks };
}

/**
 * Pieces that are cut from one strip, side by side in this order, so that the grain runs on from one to the next: fronts,
 * wrap-round sets. `joined`: they are sawn off as one blank, worked on together and parted later.
 */
export interface CutGroup {
  readonly id: string;
  /** Ids, one for each place; a piece that occurs twice counts twice. */
  readonly pieces: readonly string[];
  /** Which way they follow one another: along the pieces' length, or side by side across their width. */
  readonly follow: 'length' | 'width';
  readonly joined: boolean;
}

/** What a plan is judged by, once every piece is in it. */
export type Objective = 'cost' | 'leftover' | 'settings' | 'cuts' | 'alike';

/** Limits of the saw, the people and the way home. Absent: no limit. */
export interface CutRules {
  /** How many times the direction of cuts may change from the sheet to a piece, the first direction being one. */
  readonly stages?: number;
  /** Which size of a sheet the first cut divides. */
  readonly first?: 'length' | 'width';
  /** The longest cut the rail guides. */
  readonly longest?: Ticks;
  /** Of the two sides of a cut, one is at least so wide, so that it can be held. */
  readonly hold?: Ticks;
  /** After so many cuts nothing that is cut again is larger than what this person carries, in mm². */
  readonly carry?: { readonly area: number; readonly cuts: number };
  /** So many rough cuts of a sheet at the yard, each `over` beside either line; then everything fits the vehicle. */
  readonly yard?: {
    readonly cuts: number;
    readonly over: Ticks;
    readonly length: Ticks;
    readonly width: Ticks;
  };
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
  readonly groups?: readonly CutGroup[];
  readonly rules?: CutRules;
  /** What counts, in order, once every piece is placed; absent: as in `OBJECTIVES`. */
  readonly objectives?: readonly Objective[];
  /** The least that goes back on the rack; a leftover that holds one of these, either way round, is useful. */
  readonly wanted?: readonly { readonly length: Ticks; readonly width: Ticks }[];
}

/** The usual order. */
export const OBJECTIVES: readonly Objective[] = ['cost', 'leftover', 'settings', 'cuts', 'alike'];
