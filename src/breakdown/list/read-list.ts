import type { Lot, Shop } from '../../job/index.ts';
import { parseLength, type Ticks } from '../../measure/index.ts';
import type { Snag } from '../../snag/index.ts';
import { columnOf, headingFor, type ListColumn, type ListField } from './list-columns.ts';
import { listRows } from './list-rows.ts';

/** One row of a cut list: so many pieces, all alike. */
export interface ListRow {
  /** The row's number in the text, the heading being row 1. */
  readonly row: number;
  readonly name: string;
  /** Along the grain, as typed and in ticks; absent in `across` rows only by being swapped beforehand. */
  readonly length: ListSize;
  /** Across the grain; absent for strips, whose width is their lot's. */
  readonly width?: ListSize;
  readonly count: number;
  readonly grain: 'length' | 'free';
  readonly lot: Lot;
  /** Rows with one strip's name are cut from one strip in their order. */
  readonly strip?: string;
}

/** A size as it was typed, and what it comes to. */
export interface ListSize {
  readonly typed: string;
  readonly value: Ticks;
}

/** A list that was read: its rows with remarks, or everything that is wrong with it. */
export type ReadList =
  | { readonly ok: true; readonly rows: readonly ListRow[]; readonly notes: readonly Snag[] }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** More pieces than this are no list that a person cuts. */
const MOST_PIECES = 5000;
const MOST_ROWS = 2000;
const MOST_FAULTS = 200;

const ALONG = /^(|along|length|lengthwise|long|with|yes|y|1|true|l)$/;
const ACROSS = /^(across|width|crosswise|w)$/;
const FREE = /^(free|no|none|any|either|n|0|false|-)$/;

/**
 * Reads a maker's own list of pieces, from a file or pasted: a heading that names the columns in their own words and
 * order, then one row for each kind of piece. Bare numbers are in the shop's units unless the heading says otherwise.
 * Every fault is told at once, with its row and a cure.
 */
export function readList(text: string, shop: Shop): ReadList {
  const faults = new Faults();
  const rows = listRows(text);
  const headAt = rows.findIndex((r) => r.some((c) => c !== ''));
  if (headAt < 0) {
    faults.add(1, 'list.empty', 'The list is empty.', `Begin with a row of headings: ${HEADINGS}.`);
    return { ok: false, snags: faults.found };
  }
  const heading = rows[headAt]!;
  const columns = columnsOf(heading, headAt + 1, faults);
  const filled = rows.flatMap((cells, i) =>
    i > headAt && cells.some((c) => c !== '') ? [{ cells, row: i + 1 }] : [],
  );
  if (filled.length === 0 && faults.found.length === 0)
    faults.add(
      headAt + 1,
      'list.empty',
      'The list has a heading but no pieces.',
      'Add a row for each kind of piece.',
    );
  if (filled.length > MOST_ROWS) {
    faults.add(
      headAt + 1,
      'list.too-many',
      `The list has ${filled.length} rows; ${MOST_ROWS} can be read.`,
      'Divide it.',
    );
    return { ok: false, snags: faults.found };
  }
  if (!columns) return { ok: false, snags: faults.found };
  const read = filled.flatMap(({ cells, row }) => {
    if (cells.slice(heading.length).some((c) => c !== ''))
      faults.add(
        row,
        'list.more-cells',
        `Row ${row} has more cells than the heading.`,
        'A comma inside a number or name counts as a new cell: put quotes round it, or use semicolons.',
      );
    return rowOf(new RowReader(cells, row, columns, shop, faults));
  });
  const pieces = read.reduce((sum, r) => sum + r.count, 0);
  if (pieces > MOST_PIECES)
    faults.add(
      headAt + 1,
      'list.too-many',
      `The list has ${pieces} pieces; ${MOST_PIECES} can be read.`,
      'Divide it.',
    );
  if (faults.found.length > 0) return { ok: false, snags: faults.found };
  return { ok: true, rows: read, notes: faults.notes };
}

const HEADINGS = 'name, length, width, thickness, count, grain';

function columnsOf(heading: readonly string[], row: number, faults: Faults) {
  const columns = new Map<ListField, ListColumn>();
  heading.forEach((words, at) => {
    if (words === '') return;
    const column = columnOf(words, at);
    if (!column) faults.note(row, 'list.column-ignored', `The column “${words.slice(0, 40)}” isn’t used.`);
    else if (columns.has(column.field))
      faults.add(
        row,
        'list.column-twice',
        `Two columns give the ${column.field}.`,
        `Take out one, or rename it: “${words.slice(0, 40)}” is the second.`,
      );
    else columns.set(column.field, column);
  });
  if (columns.size === 0)
    faults.add(
      row,
      'list.no-heading',
      `Row ${row} has no heading that is known.`,
      `Write a row of headings first: ${HEADINGS}. Any order will do.`,
    );
  else if (!columns.has('length'))
    faults.add(
      row,
      'list.column-missing',
      'No column gives the length.',
      `Head it “${headingFor('length')}”.`,
    );
  return columns.has('length') ? columns : undefined;
}

/** The cells of one row, by what they hold. */
class RowReader {
  readonly row: number;
  readonly shop: Shop;
  readonly faults: Faults;
  private readonly cells: readonly string[];
  private readonly columns: ReadonlyMap<ListField, ListColumn>;

  constructor(
    cells: readonly string[],
    row: number,
    columns: ReadonlyMap<ListField, ListColumn>,
    shop: Shop,
    faults: Faults,
  ) {
    this.cells = cells;
    this.row = row;
    this.columns = columns;
    this.shop = shop;
    this.faults = faults;
  }

  text(field: ListField): string {
    const column = this.columns.get(field);
    return column === undefined ? '' : (this.cells[column.at] ?? '');
  }

  /** A size above nothing; nothing when the cell is empty or a fault was noted. */
  size(field: 'length' | 'width' | 'thickness'): ListSize | undefined {
    const typed = this.text(field);
    if (typed === '') return undefined;
    const asked = this.columns.get(field)!.units;
    // A fraction, too, is in the heading’s unit: 82 1/2 in a column of centimetres.
    const worded = asked !== undefined && !/[a-z"'′″]/i.test(typed) ? `${typed} ${asked}` : typed;
    const read = parseLength(worded, this.shop.units);
    if (!read.ok)
      this.fault(
        'list.unreadable-size',
        `The ${field} “${typed.slice(0, 40)}” can’t be read: ${read.problem}.`,
        'Write it as 590 mm, 23 1/4" or a bare number.',
      );
    else if (read.value <= 0)
      this.fault(
        'list.size-zero',
        `The ${field} “${typed.slice(0, 40)}” must be more than nothing.`,
        `Write the piece’s ${field}.`,
      );
    else return { typed: worded, value: read.value };
    return undefined;
  }

  fault(code: string, says: string, cure: string): void {
    this.faults.add(this.row, code, `Row ${this.row}: ${says}`, cure);
  }
}

function rowOf(r: RowReader): ListRow[] {
  const before = r.faults.found.length;
  const length = r.size('length');
  if (!length && r.text('length') === '')
    r.fault('list.size-missing', 'the length is missing.', 'Write it in the column for lengths.');
  const width = r.size('width');
  const thickness = r.size('thickness');
  const count = countOf(r);
  const word = r.text('grain').toLowerCase();
  const grain = ALONG.test(word)
    ? 'along'
    : ACROSS.test(word)
      ? 'across'
      : FREE.test(word)
        ? 'free'
        : undefined;
  if (!grain)
    r.fault(
      'list.unreadable-grain',
      `“${word.slice(0, 40)}” says nothing of the grain.`,
      'Write along, across or free; an empty cell means along.',
    );
  if (r.faults.found.length > before || !length) return [];
  const lot = lotFor(r, thickness, width);
  if (!lot) return [];
  if (lot.form === 'sheet' && !width) {
    r.fault(
      'list.size-missing',
      `the width is missing, and ${lot.name} is cut both ways.`,
      'Write it in the column for widths.',
    );
    return [];
  }
  const name = r.text('name') || `piece of row ${r.row}`;
  const strip = r.text('strip');
  const base = {
    row: r.row,
    name: name.slice(0, 60),
    count: count ?? 1,
    lot,
    ...(strip === '' ? {} : { strip }),
  };
  if (lot.form === 'strip' || !width) return [{ ...base, length, grain: 'length' }];
  return grain === 'across'
    ? [{ ...base, length: width, width: length, grain: 'length' }]
    : [{ ...base, length, width, grain: grain === 'free' || lot.grain === 'free' ? 'free' : 'length' }];
}

function countOf(r: RowReader): number | undefined {
  const text = r.text('count');
  if (text === '') return 1;
  const count = Number(text);
  if (/^\d{1,9}$/.test(text) && count >= 1 && count <= MOST_PIECES) return count;
  r.fault(
    'list.unreadable-count',
    `the count “${text.slice(0, 40)}” must be a whole number from 1 to ${MOST_PIECES}.`,
    'Write how many are needed.',
  );
  return undefined;
}

/** The lot that a row is cut from: the one it names, else the only one of its thickness. */
function lotFor(r: RowReader, thickness: ListSize | undefined, width: ListSize | undefined): Lot | undefined {
  const { lots } = r.shop.rack;
  const named = r.text('stock').toLowerCase();
  const ticks = (text: string) => {
    const read = parseLength(text, r.shop.units);
    return read.ok ? read.value : undefined;
  };
  const thick = (lot: Lot) =>
    !thickness ||
    ticks(lot.nominal) === thickness.value ||
    ticks(lot.thickness ?? lot.nominal) === thickness.value;
  const called = (lot: Lot) =>
    named === '' || [lot.id, lot.name, lot.material].some((w) => w.toLowerCase() === named);
  const wide = (lot: Lot) =>
    lot.form === 'sheet' || !width || (lot.width !== undefined && ticks(lot.width) === width.value);
  const meant = lots.filter((l) => called(l) && thick(l) && wide(l));
  const only = meant.length > 1 && width ? meant.filter((l) => l.form === 'sheet') : meant;
  if (only.length === 1) return only[0];
  const narrow = only.length === 0 ? lots.find((l) => called(l) && thick(l)) : undefined;
  if (narrow) {
    r.fault(
      'list.no-such-stock',
      `the strips of ${narrow.id} are ${narrow.width ?? narrow.nominal} wide, not ${width!.typed}.`,
      'Leave the width out for strips, or name other stock.',
    );
    return undefined;
  }
  const have = lots.map((l) => `${l.id} (${l.nominal})`).join(', ');
  const what = [named === '' ? '' : `“${named.slice(0, 40)}”`, thickness ? `${thickness.typed} thick` : '']
    .filter((w) => w !== '')
    .join(', ');
  if (only.length === 0)
    r.fault(
      'list.no-such-stock',
      `the rack has no stock that is ${what === '' ? 'meant' : what}.`,
      `Write one of ${have}, or add it to the rack.`,
    );
  else
    r.fault(
      'list.stock-unclear',
      `several lots of the rack would do: ${only.map((l) => l.id).join(', ')}.`,
      'Add a column “stock” with the lot that is meant, or a thickness.',
    );
  return undefined;
}

class Faults {
  readonly found: Snag[] = [];
  readonly notes: Snag[] = [];

  add(row: number, code: string, sentence: string, cure: string): void {
    if (this.found.length < MOST_FAULTS)
      this.found.push({
        code,
        level: 'stop',
        where: { path: `list/row${row}` },
        sentence,
        cures: [{ says: cure }],
      });
  }

  note(row: number, code: string, sentence: string): void {
    this.notes.push({ code, level: 'note', where: { path: `list/row${row}` }, sentence, cures: [] });
  }
}
