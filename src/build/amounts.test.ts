import { expect, test } from 'vitest';
import { areaWords, massWords, momentWords, trialLoad, volumeWords } from './amounts.ts';

test('amounts come in the units of the shop', () => {
  // 1 m² is 10.764 sq ft, 1 kg 2.2046 lb, 1 N m 8.8507 lb in, 1 l 33.814 fl oz.
  expect([areaWords('in', 1), areaWords('mm', 1.234)]).toEqual(['10.8 sq ft', '1.23 m²']);
  expect([massWords('in', 2), massWords('mm', 2)]).toEqual(['4.4 lb', '2 kg']);
  expect([momentWords('in', 10), momentWords('mm', 10)]).toEqual(['89 lb in', '10 N m']);
  expect([volumeWords('in', 0.5), volumeWords('mm', 0.53)]).toEqual(['17 fl oz', '0.6 l']);
  expect([trialLoad('in'), trialLoad('mm')]).toEqual(['10 lb', '5 kg']);
});
