import type { BookPage } from './book.ts';
import { line, type Mark, text } from './drawing.ts';
import type { Column } from './flow.ts';
import type { TextMeasure } from './text-measure.ts';

/** A paper's size in millimetres: ISO 216 A4, ANSI/ASME Y14.1 A (Letter). */
export const PAPERS = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type Paper = keyof typeof PAPERS;

const SIDE = 18;
const TOP = 23;
const BOTTOM = 18;

/** The room for text and drawings on a page of the given size. */
export function columnOf(page: { readonly width: number; readonly height: number }): Column {
  return { left: SIDE, top: TOP, width: page.width - SIDE * 2, height: page.height - TOP - BOTTOM };
}

/** Numbers the pages and gives each but the cover its running head and foot. */
export function framed(pages: readonly BookPage[], title: string, type: TextMeasure): BookPage[] {
  return pages.map((page, i) => {
    if (page.kind === 'cover') return page;
    return { ...page, marks: [...running(page, title, i + 1, pages.length, type), ...page.marks] };
  });
}

const HEADINGS: Readonly<Record<BookPage['kind'], string>> = {
  cover: '',
  views: 'Views',
  'cutting-list': 'Cutting list',
  sheets: 'Sheets and strips',
  shopping: 'Materials, hours, cost',
  finish: 'Finish',
  time: 'Time',
  gauges: 'Gauge and story sticks',
  labels: 'Labels',
  steps: 'Step cards',
  snags: 'Snags',
};

function running(page: BookPage, title: string, number: number, of: number, type: TextMeasure): Mark[] {
  const right = page.width - SIDE;
  const head = 14;
  const foot = page.height - 11;
  const heading = HEADINGS[page.kind];
  const room = page.width - SIDE * 2 - type.width(heading, 3.1, 'regular') - 8;
  return [
    text([SIDE, head], shortened(title, room, type), 3.1, { face: 'semibold' }),
    text([right, head], heading, 3.1, { anchor: 'end', tone: 'quiet' }),
    line([SIDE, head + 2.2], [right, head + 2.2], 'fine', 'faint'),
    text([right, foot], `${number} of ${of}`, 3.1, { anchor: 'end', tone: 'quiet' }),
  ];
}

function shortened(words: string, room: number, type: TextMeasure): string {
  let out = words;
  while (out.length > 1 && type.width(out, 3.1, 'semibold') > room) out = `${out.slice(0, -2).trimEnd()}…`;
  return out;
}
