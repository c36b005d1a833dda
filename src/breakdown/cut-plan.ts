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
 * either side. A leaf is a piece, or left over.
 */
export type CutNode =
  | (CutArea & {
      readonly kind: 'cut';
      readonly across: 'length' | 'width';
      readonly at: Ticks;
      readonly parts: readonly [CutNode, CutNode];
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
  readonly why: 'larger-than-all-stock' | 'stock-used-up';
}

/** A lower bound on what any plan must use. */
export interface CutBound {
  readonly sheets: number;
  readonly cost: number;
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
}
