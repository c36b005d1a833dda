import type { Ticks } from '../measure/index.ts';

/** A rectangle of a sheet, in the sheet's coordinates: x along the length, y across the width. */
export interface CutArea {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly length: Ticks;
  readonly width: Ticks;
}

/**
 * A node of a cut tree. A cut goes straight through its area: `across: 'length'` divides the length at `at` (a
 * coordinate of the sheet), the kerf takes [at, at + kerf], and the two parts are what is left of the area on
 * either side. Where less than a kerf would be left, the cut shaves it all away: the second part then has no
 * length (or width) and lies at the far edge. A leaf is a piece, or left over.
 */
export type CutNode =
  | (CutArea & {
      readonly kind: 'cut';
      readonly across: 'length' | 'width';
      readonly at: Ticks;
      readonly parts: readonly [CutNode, CutNode];
      /** A rough cut at the yard: it takes the kerf and, on either side, what the yard may be out. */
      readonly yard?: true;
      /** The pieces below are this group's. */
      readonly group?: string;
    })
  | (CutArea & { readonly kind: 'piece'; readonly piece: string; readonly turned: boolean })
  | (CutArea & { readonly kind: 'left' });

/** Sheets cut alike. In one dimension every width is 0. */
export interface CutSheet {
  readonly stock: string;
  readonly count: number;
  /** The sheet less its trim. */
  readonly root: CutNode;
}

/** A piece that could not be placed, and why. */
export interface Unplaced {
  readonly piece: string;
  readonly count: number;
  /** `rules`: stock would be large enough, but grain, faces, flaws or the rules for cuts leave no way. */
  readonly why: 'larger-than-all-stock' | 'stock-used-up' | 'rules';
}

/**
 * A superadditive weight for lengths: lengths that fit end to end in a length never weigh more together than it.
 * All work on sizes with one kerf added, and on C, the longest usable stock along (or the widest, across), also
 * with one kerf added:
 * - `size`: the length itself.
 * - `large`: 0 below the parameter, C above C less the parameter, the length itself between.
 * - `halves`: twice how often the parameter goes into a length below C/2; above C/2, twice what C has more than
 *   the rest has; at C/2, half of what C has.
 */
export interface LengthWeight {
  readonly kind: 'size' | 'large' | 'halves';
  readonly parameter: Ticks;
}

/** Why a bound holds, so that another program can check it. */
export type BoundProof =
  /**
   * A piece weighs `along(length) * across(width)`, the lesser way round if it may turn and fits both ways; with
   * `both`, the sum of both ways round, and C is the greater of the two. A sheet holds no more than its own
   * usable size weighs.
   */
  | {
      readonly kind: 'weights';
      readonly along: LengthWeight;
      readonly across: LengthWeight;
      readonly both: boolean;
    }
  /** One dimension: whole values of pieces, such that no pieces that fit one bar are worth more than `most`. */
  | {
      readonly kind: 'values';
      readonly values: readonly { readonly piece: string; readonly value: number }[];
      readonly most: number;
    };

/** A lower bound on what any plan must use that cuts every piece for which there is stock. */
export interface CutBound {
  readonly sheets: number;
  readonly cost: number;
  /** Absent: the plain area (or length) argument. */
  readonly proof?: BoundProof;
}

/** A plan for a cut problem. */
export interface CutPlan {
  readonly sheets: readonly CutSheet[];
  readonly cost: number;
  readonly bound: CutBound;
  /** True when the cost meets the bound and nothing is unplaced that any plan could place. */
  readonly proven: boolean;
  /** True when a clock ended the search, so that another machine may find another plan. */
  readonly endedByClock: boolean;
  readonly unplaced: readonly Unplaced[];
  readonly worth?: PlanWorth;
}

/** What counts of a plan besides its cost; see `Objective`. */
export interface PlanWorth {
  /**
   * Of each leftover that the rack wants, the area in whole mm² (of bars the length) times itself, added up, less the
   * same of the sheets before they were cut: what was not used up counts most when it stays in one piece.
   */
  readonly leftover: number;
  /** Different distances that cuts are set to, those along and those across counted apart; rough cuts are not counted. */
  readonly settings: number;
  readonly cuts: number;
  /** How often equal pieces come to their size in more than one way: lying otherwise, or by a last cut that goes otherwise. */
  readonly alike: number;
}
