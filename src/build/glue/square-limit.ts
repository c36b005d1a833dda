import { LEAN, LEANING_BY } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';

/** How far both diagonals of something square may differ, and why. */
export interface SquareLimit {
  readonly difference: Traced;
  /** The fit that sets the limit, in a maker’s words; undefined where none does. */
  readonly fit: string | undefined;
}

/** Fits that close or open when a case leans. */
const LEANING: ReadonlySet<string> = new Set(['door', 'drawer', 'track']);

/**
 * The limit for a rectangle so wide and high. Leaning by e, its diagonals differ by about 2 x width x e / diagonal
 * (Pythagoras, the square of e left out); e is what the tightest fit of these parts has to spare, at most the usual.
 */
export function squareLimit(
  bench: Bench,
  width: Traced,
  height: Traced,
  parts: readonly Part[],
): SquareLimit {
  const l = bench.ledger;
  const [w, h] = [l.ticks(width), l.ticks(height)];
  const ids = new Set(parts.map((p) => p.id));
  const step = bench.finest('marking');
  let lean = l.row(LEAN);
  let name: string | undefined;
  for (const fit of bench.setOut.fits) {
    if (!LEANING.has(fit.kind) || fit.deep || !fit.loop.some((m) => m.part !== undefined && ids.has(m.part)))
      continue;
    const spare = l.less('what the fit has to spare', fit.printed, fit.least);
    if (l.ticks(spare) <= 0 || l.ticks(spare) >= l.ticks(lean)) continue;
    lean = spare;
    name = fit.name;
  }
  // Tenths, rounded down, so that the limit is on the safe side.
  const tenths = Math.min(20, Math.max(1, Math.floor((20 * w) / Math.hypot(w, h) + 1e-9)));
  const difference = l.ratio('how far the diagonals may differ', lean, LEANING_BY[tenths - 1]!);
  return {
    difference: l.greatest(
      'no finer than it can be measured',
      l.round('as fine as it is measured', difference, step, 'down'),
      step,
    ),
    fit: name,
  };
}
