import { expect, test } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import { book, dimensionClashes, PLEX } from './index.ts';

test('sizes in 64ths of an inch stand beside a mark of three letters, however small they get', () => {
  const input = smallCaseBook({ unit: 'in', denominator: 64 }, 'letter');
  const parts = input.setOut.parts.map((p, i) => ({ ...p, mark: `${p.mark[0]}${20 + i}` }));
  const pages = book({ ...input, setOut: { ...input.setOut, parts } }).pages;
  for (const page of pages.filter((p) => p.kind === 'labels'))
    expect(dimensionClashes(page, PLEX)).toEqual([]);
});
