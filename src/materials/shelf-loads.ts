import { KG_PER_LB, MM_PER_INCH, MPA_PER_PSF, N_PER_LBF } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

/** A load on a shelf, spread over its face. */
export interface ShelfLoad extends Sourced {
  readonly id: string;
  readonly says: string;
  /** N/mm2 on the face of the shelf. */
  readonly pressureMpa: number;
}

const AWS = 'Architectural Woodwork Standards, 1st ed. (2009)';

/** What a shelf is built for when nobody says what will stand on it. */
export const SHELF_LOADS: readonly ShelfLoad[] = [
  {
    id: 'general',
    says: 'general shelving carries 40 lb/ft2 (1.92 kN/m2)',
    pressureMpa: 40 * MPA_PER_PSF,
    source: `${AWS}, 1.2.21.2.2`,
    confirmed: true,
  },
  {
    id: 'books',
    says: 'school, hospital, library and book shelving carries 50 lb/ft2 (2.39 kN/m2)',
    pressureMpa: 50 * MPA_PER_PSF,
    source: `${AWS}, 1.2.21.2.1`,
    confirmed: true,
  },
];

/** A shelf load by its id (`general`, `books`). */
export function shelfLoad(id: string): ShelfLoad | undefined {
  return SHELF_LOADS.find((s) => s.id === id);
}

/** The most that any one shelf is counted to carry: 200 lb. */
export const MOST_ON_A_SHELF: { readonly kg: number } & Sourced = {
  kg: 200 * KG_PER_LB,
  source: `${AWS}, 1.2.21.2`,
  confirmed: true,
};

/** Books in a row: 20 to 25 lb a running foot; the heavier is used. */
export const ROW_OF_BOOKS: { readonly nPerMm: number } & Sourced = {
  nPerMm: (25 * N_PER_LBF) / (12 * MM_PER_INCH),
  source: 'structural engineers, measured on standard library shelving',
  confirmed: true,
};

/** How far a shelf may sag: its span over `over`. */
export interface SagLimit extends Sourced {
  readonly id: string;
  readonly says: string;
  readonly over: number;
}

/** Limits on sag, the laxest first. */
export const SAG_LIMITS: readonly SagLimit[] = [
  {
    id: 'standard',
    says: 'a shelf sags no more than 1/144 of its span',
    over: 144,
    source: `${AWS}, 1.2.21.3.1.1`,
    confirmed: true,
  },
  {
    id: 'long-term',
    says: 'after years of load a beam sags no more than 1/250 of its span',
    over: 250,
    source: 'EN 1995-1-1 Table 7.2; from memory',
    confirmed: false,
  },
  {
    id: 'eye',
    says: 'the eye notices a sag of 1/32 inch in a foot, 1/384 of the span',
    over: 384,
    source: 'common practice',
    confirmed: true,
  },
];

/** A sag limit by its id (`standard`, `long-term`, `eye`). */
export function sagLimit(id: string): SagLimit | undefined {
  return SAG_LIMITS.find((s) => s.id === id);
}
