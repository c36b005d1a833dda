import type { Unplaced } from '../cut-plan.ts';
import type { CutProblem } from '../cut-problem.ts';

/**
 * A cut problem in the smallest whole numbers, with the kerf folded in: one kerf added to both sides of every
 * piece and of every usable sheet makes straight cuts with a kerf the same as cuts without one. All lengths are
 * divided by their greatest common divisor. Bars are sheets of width 1. Pieces that no stock there can hold are
 * set aside.
 */
export interface ScaledProblem {
  readonly problem: CutProblem;
  /** Ticks in one scaled unit. */
  readonly unit: number;
  readonly flat: boolean;
  readonly kinds: readonly ScaledKind[];
  readonly stocks: readonly ScaledStock[];
  /** Pieces (by index) that no stock can hold, or only stock of which there is none. */
  readonly outside: readonly { readonly piece: number; readonly why: Unplaced['why'] }[];
}

export interface ScaledKind {
  /** Index in the problem's pieces. */
  readonly piece: number;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** Whether lying across makes a difference and is allowed. */
  readonly turn: boolean;
}

export interface ScaledStock {
  /** Index in the problem's stock. */
  readonly stock: number;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  readonly cost: number;
}

/** Whether a piece lies on a sheet, one way round or the other. */
export function lies(k: ScaledKind, s: ScaledStock): boolean {
  return (
    (k.length <= s.length && k.width <= s.width) || (k.turn && k.width <= s.length && k.length <= s.width)
  );
}

/** Scales a problem. Stock nobody can use (none there, or smaller than every piece) is left out. */
export function scaled(problem: CutProblem): ScaledProblem {
  const flat = problem.stock.every((s) => s.width === undefined);
  const k = problem.kerf;
  let unit = 0;
  for (const p of problem.pieces) {
    unit = divisor(unit, p.length + k);
    if (p.width !== undefined) unit = divisor(unit, p.width + k);
  }
  for (const s of problem.stock) {
    unit = divisor(unit, s.length - 2 * s.trim + k);
    if (s.width !== undefined) unit = divisor(unit, s.width - 2 * s.trim + k);
  }
  if (unit === 0) unit = 1;

  const allStocks = problem.stock.map((s, stock) => ({
    stock,
    length: (s.length - 2 * s.trim + k) / unit,
    width: s.width === undefined ? 1 : (s.width - 2 * s.trim + k) / unit,
    count: s.count ?? Number.POSITIVE_INFINITY,
    cost: s.cost,
  }));
  const allKinds = problem.pieces.map((p, piece) => {
    const length = (p.length + k) / unit;
    const width = p.width === undefined ? 1 : (p.width + k) / unit;
    return {
      piece,
      length,
      width,
      count: p.count,
      turn: p.turn && p.width !== undefined && length !== width,
    };
  });
  const wanted = allKinds.filter((kind) => kind.count > 0);
  const there = allStocks.filter((s) => s.count > 0);
  const kinds = wanted.filter((kind) => there.some((s) => lies(kind, s)));
  return {
    problem,
    unit,
    flat,
    kinds,
    stocks: there.filter((s) => kinds.some((kind) => lies(kind, s))),
    outside: wanted.flatMap((kind) => {
      if (there.some((s) => lies(kind, s))) return [];
      const held = allStocks.some((s) => lies(kind, s));
      return [{ piece: kind.piece, why: held ? 'stock-used-up' : 'larger-than-all-stock' }];
    }),
  };
}

/** The greatest common divisor; of 0 and b it is b. */
export function divisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
