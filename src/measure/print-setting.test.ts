import { expect, test } from 'vitest';
import { printSetting } from './print-setting.ts';
import { fromInches, fromMm } from './ticks.ts';

const inches = { unit: 'in', denominator: 32 } as const;

test('a metric bit or screw keeps its size in a shop of inches', () => {
  expect(printSetting(fromMm(2), inches)).toBe('2 mm');
  expect(printSetting(fromMm(3.5), inches)).toBe('3.5 mm');
});

test('fractions as fine as it takes; what was measured as neither is a decimal', () => {
  expect(printSetting(fromMm(25.4), inches)).toBe('1"');
  expect(printSetting(fromInches(5 / 64), inches)).toBe('5/64"');
  expect(printSetting(fromInches(0.71), inches)).toBe('0.71"');
});
