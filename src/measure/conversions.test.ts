import { expect, test } from 'vitest';
import {
  KG_PER_LB,
  L_PER_US_GALLON,
  MM_PER_INCH,
  MPA_PER_PSF,
  MPA_PER_PSI,
  N_PER_KG,
  N_PER_LBF,
} from './conversions.ts';

test('the pound-force, psi and psf follow from the pound, the inch and standard gravity (NIST SP 811, App. B)', () => {
  expect(KG_PER_LB * N_PER_KG).toBeCloseTo(N_PER_LBF, 12);
  expect(N_PER_LBF / MM_PER_INCH ** 2).toBeCloseTo(MPA_PER_PSI, 14);
  expect(MPA_PER_PSF * 1e6).toBeCloseTo(47.88025898, 8);
});

test('a US gallon is 231 cubic inches', () => {
  expect((231 * MM_PER_INCH ** 3) / 1e6).toBeCloseTo(L_PER_US_GALLON, 9);
});
