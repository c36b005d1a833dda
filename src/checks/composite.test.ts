import { expect, test } from 'vitest';
import { secondMomentMm4 } from './beam.ts';
import { stiffnessNmm2 } from './composite.ts';

const board = { breadthMm: 300, lowerMm: 0, upperMm: 18, moeMpa: 10_000 };

test('one strip is a rectangle: E b t^3 / 12', () => {
  expect(stiffnessNmm2([board])).toBeCloseTo(10_000 * secondMomentMm4(300, 18), 0);
});

test('two of one height add up, whatever they are made of', () => {
  const lipping = { breadthMm: 6, lowerMm: 0, upperMm: 18, moeMpa: 12_000 };
  const sum = 10_000 * secondMomentMm4(300, 18) + 12_000 * secondMomentMm4(6, 18);
  expect(stiffnessNmm2([board, lipping])).toBeCloseTo(sum, 0);
});

test('one on another is one of both heights (a rectangle cut through its middle is the same rectangle)', () => {
  const halves = [
    { breadthMm: 300, lowerMm: 0, upperMm: 9, moeMpa: 10_000 },
    { breadthMm: 300, lowerMm: 9, upperMm: 18, moeMpa: 10_000 },
  ];
  expect(stiffnessNmm2(halves) / stiffnessNmm2([board])).toBeCloseTo(1, 9);
});

test('a deep front strip hangs below: worked by hand', () => {
  // 300 x 18 and 20 x 40, tops level, one material: areas 5400 and 800, middles 9 and 20 below the top.
  const axis = (5400 * 9 + 800 * 20) / 6200;
  const byHand = (300 * 18 ** 3) / 12 + 5400 * (axis - 9) ** 2 + (20 * 40 ** 3) / 12 + 800 * (20 - axis) ** 2;
  const strips = [
    { breadthMm: 300, lowerMm: -18, upperMm: 0, moeMpa: 10_000 },
    { breadthMm: 20, lowerMm: -40, upperMm: 0, moeMpa: 10_000 },
  ];
  expect(stiffnessNmm2(strips)).toBeCloseTo(10_000 * byHand, 0);
});

test('nothing is not stiff', () => {
  expect(stiffnessNmm2([])).toBe(0);
});
