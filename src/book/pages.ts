import type { Book, BookPage } from './book.ts';
import type { BookInput } from './book-input.ts';
import { type Content, cover } from './cover.ts';
import { finishBlocks } from './finish-pages.ts';
import { type Block, flow } from './flow.ts';
import { stickBlocks } from './gauge-pages.ts';
import { labelBlocks } from './label-pages.ts';
import { cuttingListBlocks, shoppingBlocks } from './list-pages.ts';
import { columnOf, framed, PAPERS } from './page-frame.ts';
import { sheetBlocks } from './sheet-pages.ts';
import { snagBlocks } from './snag-pages.ts';
import { stepBlocks } from './step-cards.ts';
import { PLEX, type TextMeasure } from './text-measure.ts';
import { timeBlocks } from './time-pages.ts';
import { viewPages } from './views-page.ts';
import { title } from './words.ts';

/** The plan book: cover, views, cutting list, sheets, materials and cost, step cards, labels, snags. */
export function book(input: BookInput, type: TextMeasure = PLEX): Book {
  const paper = PAPERS[input.paper];
  const column = columnOf(paper);
  const { width } = column;

  const set = (kind: BookPage['kind'], name: string, blocks: readonly Block[]): BookPage[] =>
    flow([title(name), ...blocks], column).map((marks) => ({ kind, ...paper, marks }));
  const parts: { readonly title: string; readonly pages: BookPage[] }[] = [
    { title: 'Views', pages: viewPages(input, type) },
    {
      title: 'Cutting list',
      pages: set('cutting-list', 'Cutting list', cuttingListBlocks(input, width, type)),
    },
    {
      title: 'Sheets and strips',
      pages: set('sheets', 'Sheets and strips', sheetBlocks(input, width, type)),
    },
    {
      title: 'Materials, hours, cost',
      pages: set('shopping', 'Materials, hours, cost', shoppingBlocks(input, width, type)),
    },
    ...(input.build.finishing
      ? [
          {
            title: 'Finish',
            pages: set(
              'finish',
              'Finish',
              finishBlocks(input.build.finishing, input.format.unit, width, type),
            ),
          },
        ]
      : []),
    { title: 'Time', pages: set('time', 'Time', timeBlocks(input, width, type)) },
    ...(input.build.gauges.length + input.build.stories.length > 0
      ? [
          {
            title: 'Gauge and story sticks',
            pages: set('gauges', 'Gauge and story sticks', stickBlocks(input, width, type)),
          },
        ]
      : []),
    { title: 'Step cards', pages: set('steps', 'Step cards', stepBlocks(input, width, type)) },
    { title: 'Labels', pages: set('labels', 'Labels', labelBlocks(input, width, type)) },
    { title: 'Snags', pages: set('snags', 'Snags', snagBlocks(input, width, type)) },
  ];
  const contents: Content[] = [];
  const pages: BookPage[] = [];
  for (const part of parts) {
    contents.push({ title: part.title, page: pages.length + 2 });
    pages.push(...part.pages.map((p, i) => (i === 0 ? { ...p, bookmark: part.title } : p)));
  }
  const first: BookPage = { ...cover(input, contents, type), bookmark: 'Cover' };
  return { title: input.title, pages: framed([first, ...pages], input.title, type) };
}
