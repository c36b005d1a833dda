import { describe, expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { checkInput, codes, glazeCabinet, withPlaces } from '../../test/checks/checked-job.ts';
import { SNAG_KINDS } from '../snag/index.ts';
import { checkPlan } from './check-plan.ts';

test('the glaze cabinet can be cut: nothing stops it', () => {
  const snags = checkPlan(checkInput(glazeCabinet()));
  // A saw that is half a millimetre off may leave its drawers more room than their runners put up with.
  expect(codes(snags)).toEqual([
    'fits.loose',
    'fits.tight',
    'joints.chosen',
    'screws.to-buy',
    'stock.to-buy',
    'tipping.anchor',
  ]);
  expect(snags.filter((s) => s.level === 'stop')).toEqual([]);
});

/** A piece with much wrong: long shelves, no bits, weak people, a rail that is too short. */
const bad = checkInput(
  withPlaces(bookcase({ width: '1900 mm', depth: '260 mm', bits: [], people: [{ id: 'a', lift: '5 kg' }] }), {
    'shop/tools/rail/length': '1000 mm',
  }),
);

describe('every snag', () => {
  const snags = checkPlan(bad);

  test('of many at once names its place, rule and figures, and what would cure it', () => {
    expect(codes(snags).length).toBeGreaterThan(6);
    for (const s of snags) {
      expect(Object.keys(s.where).length, s.code).toBeGreaterThan(0);
      expect(s.sentence, s.code).toMatch(/^[“A-Z].*\.$/s);
      if (s.level === 'note') continue;
      expect(s.rule, s.code).toBeDefined();
      expect(s.cures.length, s.code).toBeGreaterThan(0);
      expect(
        s.cures.every((c) => c.says.endsWith('.')),
        s.code,
      ).toBe(true);
    }
  });

  test('is in the catalogue, at a level that it names', () => {
    for (const s of snags)
      expect(SNAG_KINDS.find((k) => k.code === s.code)?.levels, s.code).toContain(s.level);
  });

  test('has figures that add up', () => {
    const figures = snags.flatMap((s) => (s.figures ? [s.figures] : []));
    expect(figures.length).toBeGreaterThan(3);
    for (const f of figures)
      expect(Math.abs(Math.abs(f.value - f.limit) - Math.abs(f.margin))).toBeLessThan(0.002);
  });

  test('is the same every time', () => {
    expect(JSON.stringify(checkPlan(bad))).toBe(JSON.stringify(snags));
  });
});

test('a shop that works in inches reads no millimetres', () => {
  const job = withPlaces(bad.job, { 'shop/units': 'in', 'shop/precision': '1/32' });
  for (const s of checkPlan(checkInput(job))) {
    const told = [s.sentence, ...s.cures.map((c) => c.says)].join(' ');
    expect(told.replaceAll(/“[^”]*”/g, ''), s.code).not.toMatch(/\d mm|\d kg|\d N\b/);
    expect(s.figures?.unit ?? '', s.code).not.toMatch(/^(mm|kg|N|N m)$/);
  }
});

test('a piece that could not be set out in full is still looked over', () => {
  const job = withPlaces(glazeCabinet(), { 'design/records/cabinet/height': '80 mm' });
  const input = checkInput(job);
  expect(input.setOut.snags.length).toBeGreaterThan(0);
  expect(codes(checkPlan(input))).toContain('tipping.anchor');
});
