import type { RatioRow } from '../measure/index.ts';
import { species } from './species.ts';

const EMC = 'Wood Handbook, FPL-GTR-282 (2021), ch. 4, eq. 4-5';

/** Constant, and what goes with the temperature in °C and its square. */
const COEFFICIENTS = {
  w: [349, 1.29, 0.0135],
  k: [0.805, 0.000736, -0.00000273],
  k1: [6.27, -0.00938, -0.000303],
  k2: [1.91, 0.0407, -0.000293],
} as const;

/**
 * The moisture content, %, that wood comes to in air of a relative humidity, %, at a temperature, °C, rounded to a tenth.
 * Wood Handbook, FPL-GTR-282 (2021), ch. 4, eq. 4-5.
 */
export function moistureIn(humidity: number, celsius: number): number {
  const at = ([a, b, c]: readonly [number, number, number]) => a + b * celsius + c * celsius * celsius;
  const [w, k, k1, k2] = [COEFFICIENTS.w, COEFFICIENTS.k, COEFFICIENTS.k1, COEFFICIENTS.k2].map(at) as [
    number,
    number,
    number,
    number,
  ];
  const kh = (k * humidity) / 100;
  const percent =
    (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh));
  return Math.round(percent * 10) / 10;
}

/** Air indoors, dry in the heated winter and damp in summer, where the maker didn’t say otherwise. */
export const INDOORS = { dryest: 35, dampest: 60, celsius: 20, source: 'from memory' } as const;

/**
 * How much of its width a board of solid wood moves between two humidities of the air, reckoned as flat-sawn, which moves
 * most; undefined for panels and for woods whose movement isn’t known. Shrinkage coefficients: Wood Handbook, ch. 13.
 */
export function movementBetween(
  material: string,
  dryest: number,
  dampest: number,
  celsius: number = INDOORS.celsius,
): RatioRow | undefined {
  const movement = species(material)?.movement;
  if (!movement) return undefined;
  const points = moistureIn(dampest, celsius) - moistureIn(dryest, celsius);
  const tenths = Math.round(points * 10);
  // Coefficients have five decimals, points of moisture one: both exact as whole numbers.
  return {
    id: `movement.${material}`,
    of: [Math.round(movement.tangential * 100_000) * tenths, 1_000_000],
    says: `flat-sawn, it moves ${movement.tangential} of its width for each of the ${tenths / 10} points of moisture between air of ${dryest} and ${dampest} %`,
    source: `${movement.source}; ${EMC}`,
  };
}
