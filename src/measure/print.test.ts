import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength } from './parse.ts';
import { type LengthFormat, printedTicks, printLength, printStep, toJsonMm } from './print.ts';
import { fromInches, fromMm, LONGEST, type Ticks, ticks } from './ticks.ts';

const sixteenths: LengthFormat = { unit: 'in', denominator: 16 };
const thirtySeconds: LengthFormat = { unit: 'in', denominator: 32 };
const sixtyFourths: LengthFormat = { unit: 'in', denominator: 64 };
const feet: LengthFormat = { unit: 'in', denominator: 16, feet: true };
const halves: LengthFormat = { unit: 'mm', step: 0.5 };
const tenths: LengthFormat = { unit: 'mm', step: 0.1 };
const formats = [sixteenths, thirtySeconds, sixtyFourths, feet, halves, tenths];

test('18 mm to the nearest 64th, 32nd and 16th (arithmetic on 1 in = 25.4 mm)', () => {
  const t = fromMm(18);
  expect(printLength(t, sixtyFourths)).toEqual({ text: '45/64"', exact: false });
  expect(printLength(t, thirtySeconds)).toEqual({ text: '23/32"', exact: false });
  expect(printLength(t, sixteenths)).toEqual({ text: '11/16"', exact: false });
});

test('rounding to fractions (arithmetic)', () => {
  expect(printLength(fromInches(20.3125), sixtyFourths)).toEqual({ text: '20 5/16"', exact: true });
  expect(printLength(fromMm(1525), sixteenths)).toEqual({ text: '60 1/16"', exact: false });
  expect(printLength(fromInches(24 / 32), thirtySeconds)).toEqual({ text: '3/4"', exact: true });
  expect(printLength(fromInches(11 + 31 / 32), sixteenths)).toEqual({ text: '12"', exact: false });
  expect(printLength(fromInches(-(11 + 31 / 32)), sixteenths)).toEqual({ text: '-12"', exact: false });
});

describe('inches', () => {
  test.each([
    [23.25, '23 1/4"', '1\' 11 1/4"'],
    [0.75, '3/4"', '3/4"'],
    [0, '0"', '0"'],
    [-0.375, '-3/8"', '-3/8"'],
    [59.0625, '59 1/16"', '4\' 11 1/16"'],
    [48, '48"', '4\' 0"'],
    [12.5, '12 1/2"', '1\' 0 1/2"'],
    [-48.5, '-48 1/2"', '-4\' 0 1/2"'],
  ])('%d', (value, plain, inFeet) => {
    expect(printLength(fromInches(value), sixteenths)).toEqual({ text: plain, exact: true });
    expect(printLength(fromInches(value), feet)).toEqual({ text: inFeet, exact: true });
  });
});

describe('millimetres', () => {
  test.each([
    [590, '590 mm'],
    [368.5, '368.5 mm'],
    [0, '0 mm'],
    [-0.5, '-0.5 mm'],
    [1580, '1580 mm'],
  ])('%d', (value, text) => {
    expect(printLength(fromMm(value), halves)).toEqual({ text, exact: true });
    expect(printLength(fromMm(value), tenths)).toEqual({ text, exact: true });
  });

  test('nearest, half away from zero', () => {
    expect(printLength(fromMm(17.6), halves)).toEqual({ text: '17.5 mm', exact: false });
    expect(printLength(fromMm(17.75), halves)).toEqual({ text: '18 mm', exact: false });
    expect(printLength(fromMm(-17.75), halves)).toEqual({ text: '-18 mm', exact: false });
    expect(printLength(fromMm(0.05), tenths)).toEqual({ text: '0.1 mm', exact: false });
  });

  test('what rounds to nothing has no sign', () => {
    expect(printLength(ticks(-1), tenths)).toEqual({ text: '0 mm', exact: false });
    expect(printLength(ticks(-1), sixteenths)).toEqual({ text: '0"', exact: false });
  });
});

const length = fc.oneof(
  fc.integer({ min: -6_400_000, max: 6_400_000 }),
  fc.integer({ min: -LONGEST + 100_000, max: LONGEST - 100_000 }),
);

test('reading a print gives the printed length; when the print is exact, the length itself', () => {
  fc.assert(
    fc.property(length, fc.constantFrom(...formats), fc.boolean(), (n, format, onGrid) => {
      const t = onGrid ? printedTicks(ticks(n), format) : ticks(n);
      const print = printLength(t, format);
      const back = parseLength(print.text, format.unit === 'in' ? 'mm' : 'in');
      expect(back).toEqual({ ok: true, value: printedTicks(t, format), exact: true });
      if (onGrid) expect(print.exact).toBe(true);
      expect(print.exact).toBe(back.ok && back.value === t);
      expect(Math.abs(printedTicks(t, format) - t)).toBeLessThanOrEqual(printStep(format) / 2);
      expect(print.text).not.toMatch(/^-0\D/);
    }),
    { numRuns: 2000 },
  );
});

test('JSON millimetres carry every tick', () => {
  fc.assert(
    fc.property(length, (n) => {
      const there = JSON.parse(JSON.stringify(toJsonMm(ticks(n)))) as number;
      expect(fromMm(there)).toBe(n === 0 ? 0 : (n as Ticks));
      expect((String(there).split('.')[1] ?? '').length).toBeLessThanOrEqual(7);
    }),
  );
});
