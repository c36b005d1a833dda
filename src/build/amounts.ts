import type { JobDocument } from '../job/index.ts';
import { KG_PER_LB, MM_PER_INCH, N_PER_LBF } from '../measure/index.ts';

type Units = JobDocument['shop']['units'];

const SQ_FT_PER_M2 = 1e6 / (12 * MM_PER_INCH) ** 2;
const LB_IN_PER_NM = 1000 / (N_PER_LBF * MM_PER_INCH);
const FL_OZ_PER_LITRE = 33.814;
const FL_OZ_PER_QUART = 32;

/** An area, in the shop's units. */
export function areaWords(units: Units, m2: number): string {
  return units === 'in' ? `${round(m2 * SQ_FT_PER_M2, 1)} sq ft` : `${round(m2, 2)} m²`;
}

/** A mass, in the shop's units. */
export function massWords(units: Units, kg: number): string {
  return units === 'in' ? `${round(kg / KG_PER_LB, 1)} lb` : `${kg} kg`;
}

/** A turning moment, in the shop's units. */
export function momentWords(units: Units, nm: number): string {
  return units === 'in' ? `${round(nm * LB_IN_PER_NM, 0)} lb in` : `${nm} N m`;
}

/** How much of something liquid is to be at hand, in the shop's units, rounded up. */
export function volumeWords(units: Units, litres: number): string {
  return units === 'in' ? `${Math.ceil(litres * FL_OZ_PER_LITRE)} fl oz` : `${Math.ceil(litres * 10) / 10} l`;
}

/** What is used of something liquid, in the shop's units. */
export function usedWords(units: Units, litres: number): string {
  return units === 'in' ? `${round(litres * FL_OZ_PER_LITRE, 1)} fl oz` : `${round(litres, 2)} l`;
}

/** What a finish covers once, in the shop's units. */
export function coverageWords(units: Units, m2PerLitre: number): string {
  return units === 'in'
    ? `a quart covers ${round((m2PerLitre * SQ_FT_PER_M2 * FL_OZ_PER_QUART) / FL_OZ_PER_LITRE, 0)} sq ft`
    : `a litre covers ${m2PerLitre} m²`;
}

/** What a drawer is loaded with when it is tried. */
export function trialLoad(units: Units): string {
  return units === 'in' ? '10 lb' : '5 kg';
}

function round(x: number, places: number): number {
  return Math.round(x * 10 ** places) / 10 ** places;
}
