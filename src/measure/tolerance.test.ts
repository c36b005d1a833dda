import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromMm, type Ticks, ticks, toMm } from './ticks.ts';
import { type LoopMember, stackUp } from './tolerance.ts';

function member(
  sign: 1 | -1,
  sizeMm: number,
  plusMm: number,
  minusMm = plusMm,
  sharedBy?: string,
): LoopMember {
  const m = {
    name: `${sizeMm} mm`,
    sign,
    size: fromMm(sizeMm),
    plus: fromMm(plusMm),
    minus: fromMm(minusMm),
  };
  return sharedBy === undefined ? m : { ...m, sharedBy };
}

/** Whole units in place of ticks, for figures printed in thousandths of an inch. */
function units(sign: 1 | -1, size: number, tolerance: number): LoopMember {
  return { name: `${size}`, sign, size: size as Ticks, plus: tolerance as Ticks, minus: tolerance as Ticks };
}

describe('published stack-ups (textbook examples found on the web; the figures recomputed)', () => {
  test('0.20, 0.10, 0.15: worst 0.45, root sum square 0.2693', () => {
    const s = stackUp([member(1, 0, 0.2), member(1, 0, 0.1), member(-1, 0, 0.15)]);
    expect(toMm(s.worst.greatest)).toBeCloseTo(0.45, 9);
    expect(toMm(s.worst.least)).toBeCloseTo(-0.45, 9);
    expect(toMm(s.rss)).toBeCloseTo(0.2693, 4);
  });

  test('ten of 0.1: worst 1.0, root sum square 0.3162', () => {
    const s = stackUp(Array.from({ length: 10 }, () => member(1, 5, 0.1)));
    expect(toMm(s.worst.greatest - s.drawn)).toBeCloseTo(1, 9);
    expect(toMm(s.rss)).toBeCloseTo(0.3162, 4);
  });

  test('40.00 +/-0.10 less 25.00 +/-0.05, 2.00 +/-0.03, 10.00 +/-0.05: gap 3.00, 0.23, 0.1261', () => {
    const s = stackUp([member(1, 40, 0.1), member(-1, 25, 0.05), member(-1, 2, 0.03), member(-1, 10, 0.05)]);
    expect(toMm(s.drawn)).toBe(3);
    expect(toMm(s.worst.greatest)).toBeCloseTo(3.23, 9);
    expect(toMm(s.worst.least)).toBeCloseTo(2.77, 9);
    expect(toMm(s.rss)).toBeCloseTo(0.1261, 4);
  });

  test('parts of 0.005, 0.003, 0.002 in a 4.020 +/-0.005 housing: gap 0.020, 0.015, 0.00794 (inches)', () => {
    const s = stackUp([units(1, 4020, 5), units(-1, 1000, 5), units(-1, 1500, 3), units(-1, 1500, 2)]);
    expect(s.drawn).toBe(20);
    expect(s.worst).toEqual({ least: 5, greatest: 35 });
    expect(s.rss / 1000).toBeCloseTo(0.00794, 5);
  });

  test('a carcass: two sides of 18 mm +0.74/-0.94 (EN 315), a shelf cut to +/-0.5 mm', () => {
    const s = stackUp([member(1, 18, 0.74, 0.94), member(1, 18, 0.74, 0.94), member(1, 564, 0.5)]);
    expect(toMm(s.worst.greatest - s.drawn)).toBeCloseTo(1.98, 9);
    expect(toMm(s.drawn - s.worst.least)).toBeCloseTo(2.38, 9);
  });
});

describe('a shared lot counts once', () => {
  test('two sides from one sheet are thick or thin together', () => {
    const alone = stackUp([member(1, 18, 0.5), member(1, 18, 0.5)]);
    const shared = stackUp([member(1, 18, 0.5, 0.5, 'lot'), member(1, 18, 0.5, 0.5, 'lot')]);
    expect(shared.worst).toEqual(alone.worst);
    expect(toMm(shared.rss)).toBeCloseTo(1, 6);
    expect(toMm(alone.rss)).toBeCloseTo(Math.SQRT1_2, 6);
  });

  test('a groove cut to a panel of the same lot has no error from the lot', () => {
    const s = stackUp([
      member(1, 18, 0.7, 0.9, 'lot'),
      member(-1, 18, 0.7, 0.9, 'lot'),
      member(1, 0.1, 0.05),
    ]);
    expect(toMm(s.worst.greatest)).toBeCloseTo(0.15, 9);
    expect(toMm(s.worst.least)).toBeCloseTo(0.05, 9);
  });

  test('limits that disagree, or are below zero, are our own mistake', () => {
    expect(() => stackUp([member(1, 1, 0.5, 0.5, 'a'), member(1, 1, 0.4, 0.5, 'a')])).toThrow('other limits');
    expect(() => stackUp([{ ...member(1, 1, 0), plus: ticks(-1) }])).toThrow('below zero');
  });
});

test('the likely range lies within the worst, and touches it for one member', () => {
  const one = fc.record({
    sign: fc.constantFrom<1 | -1>(1, -1),
    size: fc.integer({ min: 0, max: 9_000_000 }),
    plus: fc.integer({ min: 0, max: 9000 }),
    minus: fc.integer({ min: 0, max: 9000 }),
  });
  fc.assert(
    fc.property(fc.array(one, { minLength: 1, maxLength: 12 }), (raw) => {
      const loop = raw.map((m, i) => ({ ...m, name: `m${i}` }) as unknown as LoopMember);
      const s = stackUp(loop);
      expect(s.likely.greatest).toBeLessThanOrEqual(s.worst.greatest + 1);
      expect(s.likely.least).toBeGreaterThanOrEqual(s.worst.least - 1);
      expect(s.worst.least).toBeLessThanOrEqual(s.drawn);
      expect(s.worst.greatest).toBeGreaterThanOrEqual(s.drawn);
      expect(stackUp([...loop].reverse())).toEqual(s);
      const single = stackUp(loop.slice(0, 1));
      expect(single.likely.greatest - single.worst.greatest).toBeLessThanOrEqual(1);
      expect(single.rss).toBeCloseTo((loop[0]!.plus + loop[0]!.minus) / 2, 5);
    }),
  );
});
