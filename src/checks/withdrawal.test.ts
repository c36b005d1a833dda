import { expect, test } from 'vitest';
import { fasteningGravity, woodScrew } from '../materials/index.ts';
import { MM_PER_INCH, N_PER_LBF, toInches, toMm } from '../measure/index.ts';
import { screwHoldsN, withdrawalNPerMm } from './withdrawal.ts';

const lbPerInch = (nPerMm: number) => (nPerMm / N_PER_LBF) * MM_PER_INCH;

test('a number 10 screw in wood of G 0.45: 109.65 lb/in (NDS 2018 eq. 12.2-2; a reference page prints 109)', () => {
  const diameter = toMm(woodScrew('wood-screw-10')!.major.value);
  expect(toInches(woodScrew('wood-screw-10')!.major.value)).toBeCloseTo(0.19, 4);
  expect(lbPerInch(withdrawalNPerMm(0.45, diameter))).toBeCloseTo(109.65, 1);
});

test('a number 8 screw in northern red oak, G 0.68: 216.1 lb/in (NDS 2018 Table 12.3.3A)', () => {
  const oak = fasteningGravity('oak-northern-red')!;
  expect(oak).toMatchObject({ specificGravity: 0.68, confirmed: true });
  const diameter = toMm(woodScrew('wood-screw-8')!.major.value);
  expect(lbPerInch(withdrawalNPerMm(oak.specificGravity, diameter))).toBeCloseTo(216.1, 1);
});

test('half the thread holds half as much, none holds nothing', () => {
  expect(screwHoldsN(0.5, 4, 10)).toBeCloseTo(screwHoldsN(0.5, 4, 20) / 2, 9);
  expect(screwHoldsN(0.5, 4, -3)).toBe(0);
});
