import { expect, test } from 'vitest';
import { markWords } from './mark-words.ts';

test('few marks one by one, many from one to another', () => {
  expect(markWords(['E1', 'E2', 'E3'])).toBe('E1, E2 and E3');
  expect(markWords(['B1', 'B9', 'C1', 'B2', 'B10', 'B11', 'B3'])).toBe('B1–B3, B9–B11 and C1');
});
