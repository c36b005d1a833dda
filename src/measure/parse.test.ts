import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength } from './parse.ts';
import { fromMm, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from './ticks.ts';

function inches(text: string): number {
  const r = parseLength(text, 'in');
  if (!r.ok) throw new Error(r.problem);
  return r.value / TICKS_PER_INCH;
}

function mm(text: string): number {
  const r = parseLength(text, 'mm');
  if (!r.ok) throw new Error(r.problem);
  return r.value / TICKS_PER_MM;
}

function problem(text: string): { at: number; problem: string } {
  const r = parseLength(text, 'mm');
  if (r.ok) throw new Error(`${text} was read as ${r.value}`);
  return r;
}

describe('inches', () => {
  test.each([
    ['23 1/4"', 23.25],
    ['4\' 11 1/16"', 59.0625],
    ['4 ft 11 in', 59],
    ['4 feet 11 inches', 59],
    ['4\'-11 1/16"', 59.0625],
    ['4\' - 11 1/16"', 59.0625],
    ["4' 11", 59],
    ['4ft', 48],
    ["1'", 12],
    ["4 1/2'", 54],
    ['-3/8 in', -0.375],
    ['−3/8 in', -0.375],
    ['+3/8 in', 0.375],
    ['1-3/4', 1.75],
    ['1–3/4', 1.75],
    ['5/4', 1.25],
    ['1¾', 1.75],
    ['1 ¾ in', 1.75],
    ['1-¾ in', 1.75],
    ['⅜', 0.375],
    ['⁵⁄₁₆', 0.3125],
    ['2³⁄₈″', 2.375],
    ['2 5⁄8', 2.625],
    ['4′ 11″', 59],
    ['4’ 11”', 59],
    ["5''", 5],
    ['.5', 0.5],
    ['12,5 in.', 12.5],
    ['  7  in  ', 7],
    ['7\u00a0IN', 7],
    ['-0', 0],
  ])('%s', (text, value) => {
    expect(inches(text)).toBe(value);
  });
});

describe('millimetres, centimetres, metres', () => {
  test.each([
    ['590 mm', 590],
    ['590', 590],
    ['12,7', 12.7],
    ['12.7mm', 12.7],
    ['1,5 m', 1500],
    ['1,580 m', 1580],
    ['0,125', 0.125],
    ['40 cm', 400],
    ['-2,5 cm', -25],
    ['3/4"', 19.05],
  ])('%s', (text, value) => {
    expect(mm(text)).toBe(value);
  });

  test('the inch is 25.4 mm exactly (international inch, 1959)', () => {
    expect(parseLength('1 in', 'mm')).toEqual(parseLength('25.4 mm', 'in'));
    expect(parseLength('1 ft', 'mm')).toEqual(parseLength('304.8 mm', 'in'));
  });
});

describe('what is no whole tick is rounded once and says so', () => {
  test('0.164 in, the diameter of a number 8 screw (ASME B18.6.1)', () => {
    expect(parseLength('0.164 in', 'mm')).toEqual({ ok: true, value: 13330, exact: false });
  });

  test('thirds', () => {
    expect(parseLength('1/3 in', 'mm')).toEqual({ ok: true, value: 27093, exact: false });
    expect(parseLength('-1/3 in', 'mm')).toEqual({ ok: true, value: -27093, exact: false });
  });

  test('feet and odd inches are rounded together, not one by one', () => {
    expect(parseLength("1' 1/3 in", 'mm')).toEqual({ ok: true, value: 975360 + 27093, exact: false });
  });

  test('halves go away from zero', () => {
    // 1/2 tick is 1/6400 mm = 0.00015625 mm.
    expect(parseLength('0.00015625', 'mm')).toEqual({ ok: true, value: 1, exact: false });
    expect(parseLength('-0.00015625', 'mm')).toEqual({ ok: true, value: -1, exact: false });
    expect(parseLength('0.00015624', 'mm')).toEqual({ ok: true, value: 0, exact: false });
  });

  test('0.01 mm and 1/128 in are exact', () => {
    expect(parseLength('0.01', 'mm')).toEqual({ ok: true, value: 32, exact: true });
    expect(parseLength('1/128 in', 'mm')).toEqual({ ok: true, value: 635, exact: true });
  });
});

describe('what cannot be read names the text and the place', () => {
  test('a zero below the line', () => {
    expect(problem('23 1/0')).toEqual({
      ok: false,
      at: 6,
      problem: "`23 1/0`: the fraction's lower number is 0, at character 6",
    });
  });

  test.each([
    ['', 1, 'a length is missing'],
    ['   ', 1, 'a length is missing'],
    ['-', 2, 'a number is missing'],
    ['abc', 1, 'a number should stand here'],
    ['--3', 2, 'a number should stand here'],
    ['12 furlongs', 4, 'furlongs is not a unit of length'],
    ['1e5', 2, 'e is not a unit'],
    ['5.', 3, 'a digit is missing after the decimal mark'],
    ['3/', 3, 'lower number is missing'],
    ['1.5/2', 1, 'a fraction stands on whole numbers'],
    ['1/2/3', 4, 'left over'],
    ['23 5/4', 4, 'must be less than 1'],
    ['1-3', 2, 'a hyphen joins'],
    ['¾¾', 2, 'left over'],
    ['500 mm + 3/4"', 8, 'left over'],
    ['4\' 13"', 4, 'less than 12'],
    ['4.5\' 3"', 1, 'must be whole'],
    ["4' 3 mm", 4, 'only inches can follow feet'],
    ["4' -", 4, 'inches are missing'],
    ['700 m', 1, 'longer than 671 m'],
    [`${'1'.repeat(90)}`, 1, 'too long'],
  ])('%s', (text, at, says) => {
    const r = problem(text);
    expect(r.problem).toContain(says);
    expect(r.at).toBe(at);
    if (text.trim() !== '' && text.length < 40) expect(r.problem).toContain(`\`${text}\``);
  });

  test('thousands are not set apart, because 1,580 means two lengths', () => {
    expect(problem('1,580 mm').problem).toContain('could set thousands apart');
    expect(problem('1,580').problem).toContain('could set thousands apart');
    expect(problem('1.234,5').problem).toContain('one decimal mark');
    expect(problem('1,234,567').problem).toContain('one decimal mark');
    expect(problem('1 580').problem).toContain('a second number');
    expect(problem('1\u202f580').problem).toContain('a second number');
    expect(problem("1'580").problem).toContain('less than 12');
  });
});

test('any text is answered, never thrown at', () => {
  const piece = fc.constantFrom(...'0123456789 ./,-\'"½¾⁵⁄₁₆mincft−′″+xé🪵'.split(''), ' ft ', ' mm', '1/');
  const text = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.array(piece, { maxLength: 12 }).map((p) => p.join('')),
  );
  fc.assert(
    fc.property(text, fc.constantFrom('mm' as const, 'in' as const), (t, units) => {
      const r = parseLength(t, units);
      if (r.ok) expect(Number.isInteger(r.value)).toBe(true);
      else {
        expect(r.at).toBeGreaterThanOrEqual(1);
        expect(r.at).toBeLessThanOrEqual(t.length + 1);
      }
    }),
    { numRuns: 3000 },
  );
});

test('every way of writing the same inches reads the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 1, max: 63 }), (whole, over) => {
      const want = (whole + over / 64) * TICKS_PER_INCH;
      const ways = [`${whole} ${over}/64`, `${whole}-${over}/64 in`, `${(whole * 64 + over) / 64}"`];
      ways.push(`${Math.floor(whole / 12)}' ${whole % 12} ${over}/64"`, `${whole * 64 + over}/64`);
      for (const w of ways) expect(parseLength(w, 'in')).toEqual({ ok: true, value: want, exact: true });
    }),
  );
});

test('millimetres with two decimals are exact, as point or comma', () => {
  fc.assert(
    fc.property(fc.integer({ min: -5_000_00, max: 5_000_00 }), (hundredths) => {
      const text = (hundredths / 100).toFixed(2);
      const want = { ok: true, value: (hundredths * 32) as Ticks, exact: true };
      expect(parseLength(text, 'mm')).toEqual(hundredths === 0 ? { ...want, value: 0 } : want);
      expect(parseLength(text.replace('.', ','), 'mm')).toEqual(parseLength(text, 'mm'));
      expect(fromMm(hundredths / 100)).toBe(want.value === 0 ? 0 : want.value);
    }),
  );
});
