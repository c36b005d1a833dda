import { describe, expect, test } from 'vitest';
import { MPA_PER_PSI } from '../measure/index.ts';
import { creepFactor } from './creep-factors.ts';
import { density, material } from './material.ts';
import { en315Sanded, ps1Category } from './panel-thickness.ts';
import { PANELS, panel, panelStiffness, SHEET_SIZES } from './panels.ts';

test('PS 1 category 23/32, unsanded, lies between 0.688 and 0.750 in (PS 1, read)', () => {
  expect(ps1Category('23/32')).toMatchObject({ limitsIn: [0.688, 0.75], confirmed: true });
  expect(ps1Category('5/7')).toBeUndefined();
});

test('PS 1 limits are 1/32 in either way to 13/16, five per cent above (PS 1, read)', () => {
  for (const [name, nominal] of [
    ['1/4', 1 / 4],
    ['15/32', 15 / 32],
    ['3/4', 3 / 4],
    ['13/16', 13 / 16],
  ] as const) {
    const [least, greatest] = ps1Category(name)!.limitsIn;
    expect(Math.abs(least - (nominal - 1 / 32))).toBeLessThan(0.001);
    expect(Math.abs(greatest - (nominal + 1 / 32))).toBeLessThan(0.001);
  }
  const [least, greatest] = ps1Category('1-1/8')!.limitsIn;
  expect(Math.abs(least - 1.125 * 0.95)).toBeLessThan(0.001);
  expect(Math.abs(greatest - 1.125 * 1.05)).toBeLessThan(0.001);
});

describe('EN 315 sanded plywood (rows of the standard, as mills print them)', () => {
  test.each([
    [4, 0.32, 0.52],
    [6.5, 0.4, 0.59],
    [9, 0.47, 0.67],
    [12, 0.56, 0.76],
    [15, 0.65, 0.85],
    [18, 0.74, 0.94],
    [21, 0.83, 1.03],
    [24, 0.92, 1.12],
    [27, 1.01, 1.21],
    [30, 1.1, 1.3],
  ])('%d mm: +%d, -%d', (nominal, plus, minus) => {
    const limits = en315Sanded(nominal);
    expect(Math.abs(limits.plusMm - plus)).toBeLessThanOrEqual(0.0101);
    expect(Math.abs(limits.minusMm - minus)).toBeLessThanOrEqual(0.0101);
  });
});

test('moduli of fir-core plywood are those of the standard, 950,000 and 1,800,000 psi', () => {
  expect(panelStiffness('fir-plywood', 19)!.parallelMpa).toBe(Math.round(950_000 * MPA_PER_PSI));
  expect(panelStiffness('fir-core-hardwood-plywood', 19)!.parallelMpa).toBe(
    Math.round(1_800_000 * MPA_PER_PSI),
  );
});

test('birch plywood, from memory, agrees with itself by cross-ply theory', () => {
  const rows = panel('birch-plywood')!.stiffness;
  expect(rows.length).toBeGreaterThan(5);
  for (const r of rows) {
    expect(r.parallelMpa + r.perpendicularMpa!).toBe(17_500);
    expect(r.plies! % 2).toBe(1);
    // Cross-ply theory: `share` is what the odd plies have of the second moment. Solved for the veneer's modulus
    // along its grain it must be that of birch wood, 14 to 16 GPa.
    const n = r.plies!;
    let share = 0;
    for (let i = 0; i < n; i += 2) share += ((2 * i - n + 2) ** 3 - (2 * i - n) ** 3) / (2 * n ** 3);
    const veneer = (r.parallelMpa - (1 - share) * 17_500) / (2 * share - 1);
    expect(veneer).toBeGreaterThan(14_000);
    expect(veneer).toBeLessThan(16_000);
  }
});

test('the row of the nearest thickness counts, whatever the sheet measures', () => {
  expect(panelStiffness('birch-plywood', 17.6)).toMatchObject({ nominalMm: 18, parallelMpa: 10_048 });
  expect(panelStiffness('birch-plywood', 12.4)).toMatchObject({ nominalMm: 12 });
  expect(panelStiffness('birch-plywood', 13.5)).toMatchObject({ nominalMm: 12 });
  expect(panelStiffness('birch-plywood', 40)).toMatchObject({ nominalMm: 24 });
  expect(panelStiffness('marzipan', 18)).toBeUndefined();
});

test('every panel has a source, a creep factor and a sheet size', () => {
  for (const p of PANELS) {
    expect(p.source).not.toBe('');
    for (const s of p.stiffness) if (s.source.includes('from memory')) expect(s.confirmed).toBe(false);
    expect(creepFactor(p.kind)).toBeDefined();
    expect(SHEET_SIZES.some((s) => s.of.includes(p.id))).toBe(true);
    expect(density(p.id)!.kgM3).toBe(p.densityKgM3);
  }
});

test('a material is solid wood or a sheet, by its id', () => {
  expect(material('ash-white')).toMatchObject({ kind: 'solid', name: 'white ash' });
  expect(material('birch-plywood')).toMatchObject({ kind: 'sheet', name: 'birch plywood' });
  expect(material('granite')).toBeUndefined();
  expect(density('granite')).toBeUndefined();
  expect(density('ash-white')).toMatchObject({ kgM3: 672, confirmed: true });
});
