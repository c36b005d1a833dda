import { describe, expect, test } from 'vitest';
import { SETTING_OUT } from '../../materials/index.ts';
import { fromMm, Ledger, toMm } from '../../measure/index.ts';
import type { Duty } from './joint.ts';
import { spaceScrews } from './screw-spacing.ts';

/** Places of the screws in a joint of a length, mm from its low end. */
function places(duty: Duty, lengthMm: number): number[] {
  const l = new Ledger();
  const length = l.document('a joint', fromMm(lengthMm), `${lengthMm} mm`);
  return spaceScrews(l, duty, length, l.row(SETTING_OUT.setStep)).at.map((t) => toMm(l.ticks(t)));
}

function gaps(at: readonly number[]): number[] {
  return at.slice(1).map((place, i) => place - at[i]!);
}

/** Every half millimetre of length, between two lengths. */
function lengths(from: number, to: number): number[] {
  return Array.from({ length: 2 * (to - from) + 1 }, (_, i) => from + i / 2);
}

// The figures are common practice.
describe('screws of a joint that carries', () => {
  test('stand 150 to 200 mm apart, 25 mm or more from the ends, wherever two fit so', () => {
    for (const length of lengths(200, 1300)) {
      const at = places('carries', length);
      expect(at.length, `${length}`).toBeGreaterThanOrEqual(2);
      expect(Math.min(...gaps(at)), `${length}`).toBeGreaterThanOrEqual(150);
      expect(Math.max(...gaps(at)), `${length}`).toBeLessThanOrEqual(200);
      expect(at[0], `${length}`).toBeGreaterThanOrEqual(25);
      expect(length - at.at(-1)!, `${length}`).toBeGreaterThanOrEqual(25);
    }
  });

  test('are two in a short joint, and one in the middle of a very short one', () => {
    expect(places('carries', 180)).toEqual([50, 130]);
    expect(places('carries', 100)).toEqual([50]);
    expect(places('carries', 41)).toEqual([20]);
  });

  test('are never more than it takes: one fewer would stand too far apart', () => {
    for (const length of lengths(200, 1300)) {
      const n = places('carries', length).length;
      // With n - 1 screws at 200 mm and the ends no further out than half a spacing, the row would be too short.
      expect((n - 2) * 200, `${length}`).toBeLessThan(length - 2 * 25);
    }
  });
});

describe('screws of a base, up into a case', () => {
  test('stand 300 to 400 mm apart, near each corner but clear of the mitre, wherever two fit so', () => {
    for (const length of lengths(370, 2400)) {
      const at = places('base', length);
      expect(Math.min(...gaps(at)), `${length}`).toBeGreaterThanOrEqual(300);
      expect(Math.max(...gaps(at)), `${length}`).toBeLessThanOrEqual(400);
      expect(at[0], `${length}`).toBeGreaterThanOrEqual(35);
      expect(at[0], `${length}`).toBeLessThanOrEqual(135);
      expect(length - at.at(-1)!, `${length}`).toBeGreaterThanOrEqual(35);
    }
  });

  test('are two or three on a short side, four or five on a long one of up to 1.6 m', () => {
    for (const length of lengths(200, 600)) expect([2, 3]).toContain(places('base', length).length);
    for (const length of lengths(1000, 1600)) expect([4, 5]).toContain(places('base', length).length);
  });
});

describe('screws into a panel’s edge', () => {
  test('stand 150 to 200 mm apart and 50 mm clear of the ends', () => {
    for (const length of lengths(250, 2400)) {
      const at = places('back', length);
      expect(Math.min(...gaps(at)), `${length}`).toBeGreaterThanOrEqual(150);
      expect(Math.max(...gaps(at)), `${length}`).toBeLessThanOrEqual(200);
      expect(at[0], `${length}`).toBeGreaterThanOrEqual(50);
      expect(length - at.at(-1)!, `${length}`).toBeGreaterThanOrEqual(50);
    }
    for (const length of lengths(101, 250)) {
      const at = places('back', length);
      expect(Math.min(at[0]!, length - at.at(-1)!), `${length}`).toBeGreaterThanOrEqual(50);
    }
  });
});

test('a joint without screws has no places for them', () => {
  expect(() => places('edging', 500)).toThrow();
});
