import { fromMm, type LengthRow } from '../measure/index.ts';
import { ROW_OF_BOOKS } from './shelf-loads.ts';
import type { Sourced } from './sourced.ts';

/** Things of one kind that stand in a row on a shelf, spine to the front. */
export interface RowHeld {
  readonly id: RowId;
  readonly says: string;
  readonly height: LengthRow;
  readonly depth: LengthRow;
  /** What a millimetre of the row weighs, N. */
  readonly weighs: { readonly nPerMm: number } & Sourced;
}

/** What shelves can be spaced by. */
export const ROW_IDS = [
  'paperbacks',
  'books-a5',
  'books-a4',
  'files-a4',
  'lp-records',
  'single-records',
  'compact-discs',
] as const;
export type RowId = (typeof ROW_IDS)[number];

const MEMORY = 'common practice; from memory';
const A_SIZES = 'ISO 216:2007';

function row(
  id: RowId,
  says: string,
  [high, deep]: readonly [number, number],
  source: string,
  weighs: RowHeld['weighs'],
): RowHeld {
  const length = (side: 'height' | 'depth', mm: number): LengthRow => ({
    id: `row.${id}.${side}`,
    value: fromMm(mm),
    says: `${says}: ${side}`,
    source,
  });
  return { id, says, height: length('height', high), depth: length('depth', deep), weighs };
}

const paper = ROW_OF_BOOKS;
const about = (kgPerM: number) => ({ nPerMm: (kgPerM * 9.80665) / 1000, source: MEMORY, confirmed: false });

/** Rows by their id: how high and deep what stands in them is, and what it weighs. */
export const ROWS_HELD: readonly RowHeld[] = [
  row('paperbacks', 'paperbacks of the larger usual size', [198, 129], MEMORY, paper),
  row('books-a5', 'books of A5', [210, 148], A_SIZES, paper),
  row('books-a4', 'books and folders of A4', [297, 210], A_SIZES, paper),
  row('files-a4', 'lever-arch files for A4', [320, 290], MEMORY, about(35)),
  row('lp-records', 'twelve-inch records in their sleeves', [315, 315], MEMORY, about(60)),
  row('single-records', 'seven-inch records in their sleeves', [185, 185], MEMORY, about(30)),
  row('compact-discs', 'compact discs in their cases', [125, 142], MEMORY, about(10)),
];

/** Free room above a row, for fingers to tip something out. */
export const ABOVE_ROW: LengthRow = {
  id: 'row.above',
  value: fromMm(25),
  says: 'above books and records about an inch is left for fingers to tip one out',
  source: 'common practice',
};

/** A row by its id. */
export function rowHeld(id: RowId): RowHeld {
  return ROWS_HELD.find((r) => r.id === id)!;
}
