import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import { type Book, book, PLEX } from '../book/index.ts';
import { writePdf } from './pdf-pdfkit.ts';

const require = createRequire(import.meta.url);
const font = (file: string) =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/ibm-plex-sans/${file}.ttf`)));
const fonts = {
  regular: font('400Regular/IBMPlexSans_400Regular'),
  semibold: font('600SemiBold/IBMPlexSans_600SemiBold'),
};
const open = async (bytes: Uint8Array) =>
  await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise;

/** A page with a line of exactly 100 mm and a word at a known place. */
const RULER: Book = {
  title: 'Ruler',
  pages: [
    {
      kind: 'views',
      width: 210,
      height: 297,
      bookmark: 'Views',
      marks: [
        { kind: 'line', from: [20, 50], to: [120, 50], pen: 'thin', tone: 'ink' },
        {
          kind: 'text',
          at: [30, 60],
          text: 'hundred',
          size: 4,
          face: 'regular',
          anchor: 'start',
          tone: 'ink',
        },
        { kind: 'text', at: [120, 80], text: 'flush', size: 4, face: 'semibold', anchor: 'end', tone: 'ink' },
        {
          kind: 'text',
          at: [150, 100],
          text: 'up',
          size: 4,
          face: 'regular',
          anchor: 'start',
          upright: true,
          tone: 'ink',
        },
      ],
    },
  ],
};
const MM = 72 / 25.4;

describe('the plan book as a PDF', () => {
  it('has the pages, title and bookmarks of the book, and its text can be found', async () => {
    const input = smallCaseBook();
    const pages = book(input);
    const doc = await open(await writePdf(pages, fonts));
    expect(doc.numPages).toBe(pages.pages.length);
    const info = (await doc.getMetadata()).info as { Title?: string };
    expect(info.Title).toBe(input.title);
    expect((await doc.getOutline()).map((o) => o.title)).toEqual(
      pages.pages.flatMap((p) => (p.bookmark ? [p.bookmark] : [])),
    );
    const steps = pages.pages.findIndex((p) => p.kind === 'steps');
    const content = await (await doc.getPage(steps + 1)).getTextContent();
    const text = content.items.map((i) => ('str' in i ? i.str : '')).join(' ');
    expect(text).toContain('Rip piece S1.1 off sheet S1');
    expect(text).toContain('320 mm');
  });

  it('is true to size: 100 mm are 100 mm on a page of 210 x 297', async () => {
    const raw = Buffer.from(await writePdf(RULER, fonts, { compress: false })).toString('latin1');
    const doc = await open(await writePdf(RULER, fonts));
    const page = await doc.getPage(1);
    const [, , width, height] = page.view as [number, number, number, number];
    expect(width / MM).toBeCloseTo(210, 2);
    expect(height / MM).toBeCloseTo(297, 2);
    const found = /([\d.]+) ([\d.]+) m\n([\d.]+) ([\d.]+) l/.exec(raw)!.slice(1).map(Number) as number[];
    expect((found[2]! - found[0]!) / MM).toBeCloseTo(100, 3);
    expect(found[1]! / MM).toBeCloseTo(50, 3);
  });

  it('puts text where the drawing has it, also flush right and upright', async () => {
    const page = await (await open(await writePdf(RULER, fonts))).getPage(1);
    const { items } = await page.getTextContent();
    const at = (word: string) => {
      const item = items.find((i) => 'str' in i && i.str === word) as { transform: number[]; width: number };
      const [a, b, , , x, y] = item.transform as [number, number, number, number, number, number];
      return { x: x / MM, y: 297 - y / MM, width: item.width / MM, turned: Math.abs(b) > Math.abs(a) };
    };
    expect(at('hundred').x).toBeCloseTo(30, 2);
    expect(at('hundred').y).toBeCloseTo(60, 2);
    expect(at('flush').x + at('flush').width).toBeCloseTo(120, 1);
    expect(at('up')).toMatchObject({ turned: true });
    expect(at('up').x).toBeCloseTo(150, 2);
    expect(at('up').y).toBeCloseTo(100, 2);
  });

  it('sets words as wide as the layout measured them, whatever letters meet', async () => {
    const words = 'AVATAR To fit five';
    const line = {
      kind: 'text',
      at: [30, 60],
      size: 10,
      face: 'regular',
      anchor: 'start',
      tone: 'ink',
    } as const;
    const pages = [{ ...RULER.pages[0]!, marks: [{ ...line, text: words }] }];
    const page = await (await open(await writePdf({ title: 'Words', pages }, fonts))).getPage(1);
    const { items } = await page.getTextContent();
    const wide = items.reduce((sum, i) => sum + ('width' in i ? i.width : 0), 0) / MM;
    expect(wide).toBeCloseTo(PLEX.width(words, 10, 'regular'), 2);
    expect(items.map((i) => ('str' in i ? i.str : '')).join('')).toBe(words);
  });

  it('embeds both cuts of the typeface and nothing else', async () => {
    const raw = Buffer.from(await writePdf(book(smallCaseBook()), fonts, { compress: false })).toString(
      'latin1',
    );
    const names = new Set(
      [...raw.matchAll(/\/BaseFont \/([\w+-]+)/g)].map((m) => m[1]!.replace(/^[A-Z]+\+/, '')),
    );
    expect([...names].sort()).toEqual(['IBMPlexSans-Regular', 'IBMPlexSans-SemiBold']);
    expect(raw.match(/\/FontFile2? /g)!.length).toBe(2);
  });

  it('asks viewers not to scale it in printing', async () => {
    const raw = Buffer.from(await writePdf(RULER, fonts, { compress: false })).toString('latin1');
    expect(raw).toContain('/PrintScaling /None');
    expect(raw).toContain('/DisplayDocTitle true');
  });

  it('gives the same bytes twice', async () => {
    const write = async () => Buffer.from(await writePdf(book(smallCaseBook()), fonts, { compress: false }));
    expect((await write()).equals(await write())).toBe(true);
  });
});
