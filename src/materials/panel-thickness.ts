import type { Range, Sourced } from './sourced.ts';

/** How much thicker and thinner than nominal a panel may be, mm. */
export interface ThicknessLimits extends Sourced {
  readonly plusMm: number;
  readonly minusMm: number;
}

/**
 * Limits on the thickness of sanded plywood by EN 315:2000, t the nominal thickness in mm:
 * +(0.2 + 0.03 t) and -(0.4 + 0.03 t). Rounded to a hundredth of a millimetre.
 */
export function en315Sanded(nominalMm: number): ThicknessLimits {
  const hundredths = (x: number) => Math.round(x * 100) / 100;
  return {
    plusMm: hundredths(0.2 + 0.03 * nominalMm),
    minusMm: hundredths(0.4 + 0.03 * nominalMm),
    source: 'EN 315:2000; agrees with the tables of two mills (18 mm: +0.7, -0.9)',
    confirmed: true,
  };
}

/** The least and greatest thickness, in inches, of an unsanded panel of a PS 1 performance category. */
export interface CategoryLimits extends Sourced {
  readonly category: string;
  readonly limitsIn: Range;
}

const PS1 =
  'US Voluntary Product Standard PS 1, thickness by performance category, as tabulated by the trade';

const CATEGORIES: readonly (readonly [string, number, number])[] = [
  ['1/4', 0.219, 0.281],
  ['11/32', 0.313, 0.375],
  ['3/8', 0.344, 0.406],
  ['7/16', 0.406, 0.469],
  ['15/32', 0.438, 0.5],
  ['1/2', 0.469, 0.531],
  ['19/32', 0.563, 0.625],
  ['5/8', 0.594, 0.656],
  ['23/32', 0.688, 0.75],
  ['3/4', 0.719, 0.781],
  ['13/16', 0.781, 0.844],
  ['7/8', 0.831, 0.919],
  ['1', 0.95, 1.05],
  ['1-1/8', 1.069, 1.181],
  ['1-1/4', 1.188, 1.313],
];

/** A PS 1 category by its name (`23/32`); undefined when there is none of that name. */
export function ps1Category(category: string): CategoryLimits | undefined {
  const row = CATEGORIES.find(([name]) => name === category);
  if (row === undefined) return undefined;
  return { category, limitsIn: [row[1], row[2]], source: PS1, confirmed: true };
}
