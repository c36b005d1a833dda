import { expect, test } from 'vitest';
import {
  areaWords,
  coverageWords,
  massWords,
  momentWords,
  trialLoad,
  usedWords,
  volumeWords,
} from './amounts.ts';

test('amounts come in the units of the shop', () => {
  // 1 m² is 10.764 sq ft, 1 kg 2.2046 lb, 1 N m 8.8507 lb in, 1 l 33.814 fl oz.
  expect([areaWords('in', 1), areaWords('mm', 1.234)]).toEqual(['10.8 sq ft', '1.23 m²']);
  expect([massWords('in', 2), massWords('mm', 2)]).toEqual(['4.4 lb', '2 kg']);
  expect([momentWords('in', 10), momentWords('mm', 10)]).toEqual(['89 lb in', '10 N m']);
  expect([volumeWords('in', 0.5), volumeWords('mm', 0.53)]).toEqual(['17 fl oz', '0.6 l']);
  expect([trialLoad('in'), trialLoad('mm')]).toEqual(['10 lb', '5 kg']);
});

// A square foot is 0.09290304 m², a US fluid ounce 29.5735295625 ml, a quart 32 of them: NIST Handbook 44, Appendix C.
test('areas and liquids are told in square feet, ounces and quarts where the shop works in inches', () => {
  expect(areaWords('in', 0.09290304 * 12)).toBe('12 sq ft');
  expect(usedWords('in', 10 * 0.0295735295625)).toBe('10 fl oz');
  expect(volumeWords('in', 9.2 * 0.0295735295625)).toBe('10 fl oz');
  expect(coverageWords('in', (100 * 0.09290304) / (32 * 0.0295735295625))).toBe('a quart covers 100 sq ft');
  expect([areaWords('mm', 1.234), usedWords('mm', 0.183), coverageWords('mm', 12)]).toEqual([
    '1.23 m²',
    '0.18 l',
    'a litre covers 12 m²',
  ]);
});
