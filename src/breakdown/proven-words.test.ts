import { expect, test } from 'vitest';
import { provenWords } from './proven-words.ts';

const plan = {
  sheets: [],
  cost: 3,
  bound: { sheets: 2, cost: 2 },
  proven: false,
  endedByClock: false,
  unplaced: [],
};
const words = (more: object, sheets = 3) =>
  provenWords({ plan: { ...plan, ...more }, sheets: Array.from({ length: sheets }, () => ({}) as never) });

test('a plan says how far it is proven, and that the clock ended its search', () => {
  expect(words({ proven: true })).toBe('3 used: proven, no plan costs less');
  expect(words({}, 2)).toBe('2 used: no plan can do with fewer');
  expect(words({})).toBe('3 used; any plan needs at least 2');
  expect(words({ endedByClock: true })).toMatch(/at least 2; the search was ended before its time/);
  expect(words({ unplaced: [{ piece: 'a', count: 1, why: 'stock-used-up' }] })).toBe(
    '3 used, and not enough',
  );
});
