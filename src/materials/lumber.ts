import { fromInches, TICKS_PER_INCH, type Ticks } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

/** A sold size and what is left of it once it is dry and planed. */
export interface DressedSize extends Sourced {
  readonly nominal: string;
  readonly dressed: Ticks;
}

const PS20 = 'American Softwood Lumber Standard PS 20, Table 3, dry';
const NHLA = 'NHLA grading rules, standard surfaced thickness, two sides';

function sizes(source: string, rows: readonly (readonly [string, number])[]): DressedSize[] {
  return rows.map(([nominal, inches]) => ({ nominal, dressed: fromInches(inches), source, confirmed: true }));
}

/** Softwood thicknesses, nominal in inches. */
export const SOFTWOOD_THICKNESSES: readonly DressedSize[] = sizes(PS20, [
  ['3/8', 5 / 16],
  ['1/2', 7 / 16],
  ['5/8', 9 / 16],
  ['3/4', 5 / 8],
  ['1', 3 / 4],
  ['1-1/4', 1],
  ['1-1/2', 1.25],
  ['2', 1.5],
  ['2-1/2', 2],
  ['3', 2.5],
  ['3-1/2', 3],
  ['4', 3.5],
]);

/** Softwood widths, nominal in inches. */
export const SOFTWOOD_WIDTHS: readonly DressedSize[] = sizes(PS20, [
  ['2', 1.5],
  ['3', 2.5],
  ['4', 3.5],
  ['5', 4.5],
  ['6', 5.5],
  ['7', 6.5],
  ['8', 7.25],
  ['9', 8.25],
  ['10', 9.25],
  ['11', 10.25],
  ['12', 11.25],
  ['14', 13.25],
  ['16', 15.25],
]);

/** Hardwood thicknesses planed on two sides, by the rough one in quarters of an inch. */
export const HARDWOOD_THICKNESSES: readonly DressedSize[] = sizes(NHLA, [
  ['3/8', 3 / 16],
  ['1/2', 5 / 16],
  ['5/8', 7 / 16],
  ['3/4', 9 / 16],
  ['4/4', 13 / 16],
  ['5/4', 1 + 1 / 16],
  ['6/4', 1 + 5 / 16],
  ['8/4', 1.75],
  ['12/4', 2.75],
  ['16/4', 3.75],
]);

/** The dressed size of a nominal one in a table; undefined when the table has none of that name. */
export function dressed(table: readonly DressedSize[], nominal: string): DressedSize | undefined {
  return table.find((s) => s.nominal === nominal);
}

const FOOT = 12 * TICKS_PER_INCH;

/** Board feet of a board as bought by size: thickness x width x length in inches over 144. */
export function boardFeet(thickness: Ticks, width: Ticks, length: Ticks): number {
  return (thickness / TICKS_PER_INCH) * (width / FOOT) * (length / FOOT);
}

/**
 * Board feet of a hardwood board as it is tallied: its surface measure, width in inches x length in whole feet / 12
 * to the nearest whole number, times the thickness in inches, less than one inch counting as one. NHLA rules.
 */
export function hardwoodTally(
  thickness: Ticks,
  width: Ticks,
  length: Ticks,
): { readonly surfaceMeasure: number; readonly boardFeet: number } {
  const feet = Math.floor(length / FOOT);
  const surfaceMeasure = Math.round(((width / TICKS_PER_INCH) * feet) / 12);
  return { surfaceMeasure, boardFeet: surfaceMeasure * Math.max(1, thickness / TICKS_PER_INCH) };
}
