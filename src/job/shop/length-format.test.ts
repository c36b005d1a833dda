import { expect, test } from 'vitest';
import { formatOf } from './length-format.ts';

test('a shop prints in its own units, as finely as it asks', () => {
  expect(formatOf({ units: 'mm', precision: '0.1' })).toEqual({ unit: 'mm', step: 0.1 });
  expect(formatOf({ units: 'in', precision: '1/64' })).toEqual({ unit: 'in', denominator: 64 });
});

test('a precision of the other system counts as not stated', () => {
  expect(formatOf({ units: 'mm', precision: '1/16' })).toEqual({ unit: 'mm', step: 0.5 });
  expect(formatOf({ units: 'in', precision: '0.1' })).toEqual({ unit: 'in', denominator: 32 });
});
