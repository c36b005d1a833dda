/** A row of the plate table: sides long over short, and the largest sag over q a^4 / (E t^3). */
export interface PlateRow {
  readonly ratio: number;
  readonly alpha: number;
}

/**
 * A rectangular plate on all four edges under an even load, Poisson's ratio 0.3: w = alpha q a^4 / (E t^3), a the shorter
 * side. Roark's Formulas for Stress and Strain, flat plates, simply supported edges; from memory.
 */
export const PLATE_TABLE: readonly PlateRow[] = [
  { ratio: 1, alpha: 0.0444 },
  { ratio: 1.2, alpha: 0.0616 },
  { ratio: 1.4, alpha: 0.077 },
  { ratio: 1.6, alpha: 0.0906 },
  { ratio: 1.8, alpha: 0.1017 },
  { ratio: 2, alpha: 0.111 },
  { ratio: 3, alpha: 0.1335 },
  { ratio: 4, alpha: 0.14 },
  { ratio: 5, alpha: 0.1417 },
];

/** Of a plate so long that its ends don't matter: 5/384 x 12 x (1 - 0.09). */
const ENDLESS = 0.1421;

/** The sag in mm of the middle of a plate under `pressureMpa`; between the rows of the table along straight lines. */
export function plateSagMm(
  pressureMpa: number,
  sidesMm: readonly [number, number],
  thicknessMm: number,
  moeMpa: number,
): number {
  const [short, long] = [Math.min(...sidesMm), Math.max(...sidesMm)];
  return (alphaOf(long / short) * pressureMpa * short ** 4) / (moeMpa * thicknessMm ** 3);
}

function alphaOf(ratio: number): number {
  const after = PLATE_TABLE.findIndex((r) => r.ratio >= ratio);
  if (after < 0) return ENDLESS;
  const [b, a] = [PLATE_TABLE[after]!, PLATE_TABLE[Math.max(0, after - 1)]!];
  if (b === a || b.ratio === a.ratio) return b.alpha;
  return a.alpha + ((b.alpha - a.alpha) * (ratio - a.ratio)) / (b.ratio - a.ratio);
}
