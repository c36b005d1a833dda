import { type LengthFormat, printedTicks, printLength } from './print.ts';
import { TICKS_PER_MM, type Ticks, toInches, toMm } from './ticks.ts';

/** The finer grids of each system, tried in this order. */
const FINER: Record<LengthFormat['unit'], readonly LengthFormat[]> = {
  mm: [{ unit: 'mm', step: 0.1 }],
  in: [
    { unit: 'in', denominator: 32 },
    { unit: 'in', denominator: 64 },
  ],
};

/**
 * A length as a card must print it: what is set is what is printed. In the shop's own format where that is exact,
 * else as fine as it takes, at last as a decimal of three places. What is no fraction of an inch but whole tenths of
 * a millimetre is metric goods: a bit of 2 mm is called so in any shop.
 */
export function printSetting(t: Ticks, format: LengthFormat): string {
  for (const f of [format, ...FINER[format.unit]])
    if (printedTicks(t, f) === t) return printLength(t, f).text;
  const metric = format.unit === 'mm' || (10 * t) % TICKS_PER_MM === 0;
  return metric ? `${decimal(toMm(t))} mm` : `${decimal(toInches(t))}"`;
}

function decimal(x: number): string {
  return String(Math.round(x * 1000) / 1000);
}
