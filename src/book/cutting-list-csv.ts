import type { BuildPlan } from '../build/index.ts';
import type { LengthFormat } from '../measure/index.ts';
import type { BookInput } from './book-input.ts';
import { cuttingList } from './cutting-list.ts';
import { lengthsOf } from './lengths.ts';

/** What is listed. */
interface Listed extends Pick<BookInput, 'setOut' | 'breakdown'> {
  readonly build: Pick<BuildPlan, 'stock'>;
}

/**
 * The cutting list as CSV (RFC 4180: commas, CRLF, quotes where they are needed), one line for parts cut alike.
 * A text that a spreadsheet would take for a formula gets an apostrophe before it.
 */
export function cuttingListCsv({ setOut, breakdown, build }: Listed, format: LengthFormat): string {
  const lengths = lengthsOf(setOut.ledger, format);
  const name = (id: string) => breakdown.lots.find((l) => l.lot.id === id)?.lot.name ?? id;
  const head = [
    'Marks',
    'Name',
    'Count',
    `Length (${lengths.unit})`,
    `Width (${lengths.unit})`,
    `Thickness (${lengths.unit})`,
    'Material',
    'Grain',
    'Notes',
  ];
  const rows = cuttingList(setOut, breakdown, build).map((r) => [
    r.marks,
    r.name,
    `${r.count}`,
    lengths.bare(r.length),
    lengths.bare(r.width),
    lengths.measured(r.thickness),
    name(r.lot),
    r.grain,
    r.notes,
  ]);
  return csv([head, ...rows]);
}

/** Rows of texts as CSV. */
export function csv(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}
