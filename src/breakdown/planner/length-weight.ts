import type { LengthWeight } from '../cut-plan.ts';

/**
 * The weight of a length x in a longest length c (see `LengthWeight`), in whole numbers. `large` is the bound
 * of S. Martello and P. Toth (1990) as a function, `halves` the one of J. Carlier, F. Clautiaux and A. Moukrim,
 * "New reduction procedures and lower bounds for the two-dimensional bin packing problem with fixed
 * orientation", Computers & OR 34 (2007). All three are superadditive on [0, c].
 */
export function weigh(kind: LengthWeight['kind'], parameter: number, c: number, x: number): number {
  if (kind === 'size') return x;
  if (kind === 'large') return x < parameter ? 0 : x > c - parameter ? c : x;
  const most = Math.floor(c / parameter);
  if (2 * x < c) return 2 * Math.floor(x / parameter);
  if (2 * x === c) return most;
  return 2 * (most - Math.floor((c - x) / parameter));
}
