import { expect, test } from 'vitest';
import { demoDocument } from '../../test/build/built.ts';
import { checkJob } from '../job/index.ts';
import { ShopWords } from './shop-words.ts';

test.each([
  ['mm', 0.397, '0.4 mm'],
  ['in', 0.397, '1/64"'],
  ['in', 0.25, '0.010"'],
  ['in', 0.005, 'less than 0.001"'],
  ['in', 1.2, '0.047"'],
  ['in', 3.175, '1/8"'],
] as const)('in a shop of %s a gap of %s mm is told as %s', (units, mm, told) => {
  const document = demoDocument();
  const read = checkJob({
    ...document,
    shop: { ...document.shop, units, precision: units === 'in' ? '1/32' : '0.5' },
  });
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  expect(new ShopWords(read.job).gap(mm)).toBe(told);
});
