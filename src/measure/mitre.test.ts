import { expect, test } from 'vitest';
import { mitreFace, mitreGain } from './mitre.ts';
import { fromInches, toInches } from './ticks.ts';

test('a 2.5 in piece, 20 in at the short points, both ends at 45 degrees: 25 in at the long ones (geometry)', () => {
  expect(fromInches(20) + 2 * mitreGain(fromInches(2.5), 45)).toBe(fromInches(25));
});

test('an octagon of 3 in stock: both ends at 22.5 degrees add 2.4853 in (geometry)', () => {
  expect(toInches(2 * mitreGain(fromInches(3), 22.5))).toBeCloseTo(2.4853, 4);
});

test('the face of a 45 degree cut across 2.5 in is 3.5355 in, and opens 0.1234 in at two degrees (geometry)', () => {
  expect(toInches(mitreFace(fromInches(2.5), 45))).toBeCloseTo(2.5 * Math.SQRT2, 4);
  expect(toInches(mitreFace(fromInches(2.5), 45)) * 2 * Math.tan(Math.PI / 180)).toBeCloseTo(0.1234, 4);
});

test('a square cut adds nothing', () => {
  expect(mitreGain(fromInches(3), 0)).toBe(0);
  expect(mitreFace(fromInches(3), 0)).toBe(fromInches(3));
});
