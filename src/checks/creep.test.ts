import { expect, test } from 'vitest';
import { finalFactor, finalFactorOf } from './creep.ts';

test('a load that stays, in a heated room: solid wood 1.6, plywood 1.8 (EN 1995-1-1 Table 3.2, read)', () => {
  expect(finalFactorOf('solid', 1)).toBe(1.6);
  expect(finalFactorOf('plywood', 1)).toBe(1.8);
});

test('unheated and outdoors (EN 1995-1-1 Table 3.2, read)', () => {
  expect(finalFactorOf('solid', 2)).toBe(1.8);
  expect(finalFactorOf('solid', 3)).toBe(3);
  expect(finalFactorOf('plywood', 2)).toBe(2);
  expect(finalFactorOf('plywood', 3)).toBe(3.5);
});

test('fibreboard creeps most (EN 1995-1-1 Table 3.2, from memory), and is not for damp places', () => {
  expect(finalFactorOf('mdf', 1)).toBe(3.25);
  expect(finalFactorOf('mdf', 3)).toBeUndefined();
});

test('a load that comes and goes creeps less, and an unknown material has no factor', () => {
  expect(finalFactor(0.8, 0.5)).toBe(1.4);
  expect(finalFactor(0.8, 0)).toBe(1);
  expect(finalFactorOf('solid', 1, 0)).toBe(1);
  expect(finalFactorOf('jelly', 1)).toBeUndefined();
});
