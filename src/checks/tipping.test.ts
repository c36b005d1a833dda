import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KG_PER_LB, MM_PER_INCH, N_PER_KG } from '../measure/index.ts';
import { balance, centreOf, tiltOfBlock, tipAngle, tippingPullN } from './tipping.ts';

const lb = (n: number) => n * KG_PER_LB;
const inch = (n: number) => n * MM_PER_INCH;
const inLb = (nmm: number) => nmm / (KG_PER_LB * N_PER_KG * MM_PER_INCH);

describe('statics of a rigid body, worked by hand', () => {
  test('40 kg with its centre 200 mm behind the front feet: 65.4 N at 1.2 m tips it', () => {
    const f = tippingPullN([{ kg: 40, behindMm: 200, heightMm: 600 }], 1200);
    expect(Math.abs(f - 65.4)).toBeLessThan(0.1);
    const weights = [{ kg: 40, behindMm: 200, heightMm: 600 }];
    expect(balance(weights, { pull: { newtons: f + 0.01, heightMm: 1200 } }).stands).toBe(false);
    expect(balance(weights, { pull: { newtons: f - 0.01, heightMm: 1200 } }).stands).toBe(true);
  });

  // The conditions are those of ASTM F2057-23, 9.2.3 (by way of 88 FR 28408, from memory).
  const dresser = { kg: lb(100), behindMm: inch(9), heightMm: inch(20) };
  const tiltDegrees = tiltOfBlock(inch(0.43), inch(18));

  test('a 0.43 in block under feet 18 in apart tilts it 1.369 degrees', () => {
    expect(tiltDegrees).toBeCloseTo(1.369, 3);
  });

  test('a 100 lb dresser with 60 lb on a drawer 14 in in front and 24 in up tips: 852.0 to 874.2 in-lb, 0.975', () => {
    const b = balance([dresser, { kg: lb(60), behindMm: inch(-14), heightMm: inch(24) }], { tiltDegrees });
    expect(inLb(b.rightingNmm)).toBeCloseTo(852.0, 1);
    expect(inLb(b.overturningNmm)).toBeCloseTo(874.2, 1);
    expect(Math.abs(b.ratio - 0.975)).toBeLessThan(0.002);
    expect(b.stands).toBe(false);
  });

  test('with the drawer only 8 in in front it stands: 514.3 in-lb, 1.657', () => {
    const b = balance([dresser, { kg: lb(60), behindMm: inch(-8), heightMm: inch(24) }], { tiltDegrees });
    expect(inLb(b.overturningNmm)).toBeCloseTo(514.3, 1);
    expect(b.ratio).toBeCloseTo(1.657, 3);
    expect(b.stands).toBe(true);
  });

  test('a centre 9 in behind and 20 in up tips at 24.23 degrees', () => {
    expect(tipAngle(inch(9), inch(20))).toBeCloseTo(24.23, 2);
  });
});

test('nothing overturns a case that is left alone, and a weight in front of its feet tips it alone', () => {
  expect(balance([{ kg: 10, behindMm: 100, heightMm: 500 }])).toMatchObject({
    ratio: Number.POSITIVE_INFINITY,
    stands: true,
  });
  expect(tippingPullN([{ kg: 10, behindMm: -1, heightMm: 0 }], 1000)).toBeLessThan(0);
});

const weight = fc.record({
  kg: fc.integer({ min: 1, max: 200 }),
  behindMm: fc.integer({ min: -300, max: 800 }),
  heightMm: fc.integer({ min: 0, max: 2000 }),
});

test('several weights stand or tip as their middle does, and tilt the same way', () => {
  fc.assert(
    fc.property(fc.array(weight, { minLength: 1, maxLength: 6 }), (weights) => {
      const c = centreOf(weights);
      const net = (ws: typeof weights, tiltDegrees: number) => {
        const b = balance(ws, { tiltDegrees });
        return b.rightingNmm - b.overturningNmm;
      };
      // Righting and overturning may nearly cancel, so the rounding is held against their sizes, not their difference.
      const size = weights.reduce((sum, w) => sum + w.kg * 10 * (Math.abs(w.behindMm) + w.heightMm + 1), 0);
      for (const tilt of [0, 5, 20]) {
        // Each of the four moments is rounded to a thousandth of a N mm.
        expect(Math.abs(net(weights, tilt) - net([c], tilt))).toBeLessThan(0.0021 + 1e-9 * size);
      }
      const angle = tipAngle(c.behindMm, c.heightMm);
      if (c.behindMm > 1 && c.heightMm > 1) {
        expect(balance([c], { tiltDegrees: angle - 0.001 }).stands).toBe(true);
        expect(balance([c], { tiltDegrees: angle + 0.001 }).stands).toBe(false);
      }
    }),
  );
});
