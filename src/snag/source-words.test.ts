import { expect, test } from 'vitest';
import { sourceWords } from './source-words.ts';

test('a source that was not read says so, once', () => {
  expect(sourceWords({ source: 'EN 315:2000', confirmed: true })).toBe('EN 315:2000');
  expect(sourceWords({ source: 'EN 16122', confirmed: false })).toBe('EN 16122, from memory');
  expect(sourceWords({ source: 'ASTM F2057-23; from memory', confirmed: false })).toBe(
    'ASTM F2057-23; from memory',
  );
  expect(sourceWords({ source: 'common practice', confirmed: false })).toBe('common practice');
});
