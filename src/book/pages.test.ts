import { describe, expect, it } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import type { BookPage } from './book.ts';
import { book, dimensionClashes, PLEX } from './index.ts';

const words = (page: BookPage) => page.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []));

describe('a plan book', () => {
  const input = smallCaseBook();
  const { pages } = book(input);

  it('holds every part of the book in order, each with a bookmark', () => {
    const kinds = pages.map((p) => p.kind).filter((k, i, all) => k !== all[i - 1]);
    expect(kinds).toEqual([
      'cover',
      'views',
      'cutting-list',
      'sheets',
      'shopping',
      'time',
      'steps',
      'labels',
      'snags',
    ]);
    expect(pages.filter((p) => p.bookmark).length).toBe(kinds.length);
  });

  it('names on the cover the page where each part begins', () => {
    const cover = words(pages[0]!);
    for (const [i, page] of pages.entries()) {
      if (i === 0 || !page.bookmark) continue;
      expect(cover[cover.indexOf(page.bookmark) + 1]).toBe(`${i + 1}`);
    }
  });

  it('has a page of the gauge sticks where there are any', () => {
    const { parts } = input.setOut;
    const [part] = parts;
    const uses = [{ operation: 'D/set', mark: 'D' }];
    const gauges = [{ name: 'gauge stick 1', length: part!.length, uses }];
    const found = book({ ...input, build: { ...input.build, gauges } }).pages.filter(
      (p) => p.kind === 'gauges',
    );
    expect(found).toHaveLength(1);
    expect(found[0]!.bookmark).toBe('Gauge and story sticks');
    expect(words(found[0]!)).toContain('gauge stick 1');
    expect(found[0]!.marks.some((m) => m.kind === 'text' && m.trace === part!.length)).toBe(true);
  });

  it('numbers the pages', () => {
    pages.forEach((p, i) => {
      if (i > 0) expect(words(p)).toContain(`${i + 1} of ${pages.length}`);
    });
  });

  it('has a card for every operation, in order, whole on its page', () => {
    const titles = pages.filter((p) => p.kind === 'steps').map(words);
    let at = 0;
    for (const [i, o] of input.build.operations.entries()) {
      while (at < titles.length && !titles[at]!.join(' ').includes(o.title)) at++;
      expect(at, o.title).toBeLessThan(titles.length);
      const page = titles[at]!;
      expect(page).toContain(`${i + 1}`);
      const lastWords = o.lines[o.lines.length - 1]!.split(' ').slice(-2, -1)[0]!;
      expect(page.join(' ')).toContain(lastWords);
    }
  });

  it('spells a caution out at least once on every page that needs it', () => {
    for (const page of pages.filter((p) => p.kind === 'steps')) {
      const all = words(page);
      const again = all.indexOf('Cautions as above.');
      if (again < 0) continue;
      const spelled = all.findIndex((w) =>
        input.build.operations.some((o) => o.cautions.some((c) => c.startsWith(w))),
      );
      expect(spelled).toBeGreaterThanOrEqual(0);
      expect(spelled).toBeLessThan(again);
    }
  });

  it('prints the sizes that are sawn, and a measured thickness to the tenth', () => {
    const list = words(pages.find((p) => p.kind === 'cutting-list')!);
    expect(list).toContain('764.8');
    expect(list).toContain('17.6');
  });

  for (const paper of ['a4', 'letter'] as const)
    for (const format of [{ unit: 'mm', step: 0.5 } as const, { unit: 'in', denominator: 16 } as const])
      it(`reads clearly on ${paper} in ${format.unit}, nothing beyond the paper`, () => {
        for (const page of book(smallCaseBook(format, paper)).pages)
          expect(dimensionClashes(page, PLEX)).toEqual([]);
      });

  it('gives the same pages twice', () => {
    expect(JSON.stringify(book(smallCaseBook()))).toBe(JSON.stringify(book(smallCaseBook())));
  });

  it('drawn again from the same setting-out refers to the same ledger entries', () => {
    const again = smallCaseBook();
    const first = JSON.stringify(book(again));
    const size = again.setOut.ledger.size;
    expect(JSON.stringify(book(again))).toBe(first);
    expect(again.setOut.ledger.size).toBe(size);
  });
});
