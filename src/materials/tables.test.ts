import { expect, test } from 'vitest';
import { L_PER_US_GALLON } from '../measure/index.ts';
import { ADHESIVES, adhesive } from './adhesives.ts';
import { CAUTIONS, caution } from './cautions.ts';
import { CREEP_FACTORS, creepFactor } from './creep-factors.ts';
import { coverageM2PerL, FINISHES, finish, OILY_CLOTHS } from './finishes.ts';
import { SETTING_OUT } from './setting-out-rules.ts';
import {
  MOST_ON_A_SHELF,
  ROW_OF_BOOKS,
  SAG_LIMITS,
  SHELF_LOADS,
  sagLimit,
  shelfLoad,
} from './shelf-loads.ts';
import type { Range, Sourced } from './sourced.ts';
import { STABILITY_LOADS, stabilityLoad } from './stability-loads.ts';
import { TOOL_ACCURACIES, toolAccuracy } from './tool-accuracy.ts';

const M2_PER_FT2 = 0.09290304;

test('coverage: solids 0.65 at 5 mil is 208.5 ft2/gal, at 125 um 5.2 m2/L (published data sheet)', () => {
  expect(coverageM2PerL(0.65, 125)).toBeCloseTo(5.2, 6);
  expect((coverageM2PerL(0.65, 5 * 25.4) * L_PER_US_GALLON) / M2_PER_FT2).toBeCloseTo(208.5, 0);
});

test('coverage: solids 0.52 at 1.5 mil, 30% reaching the work, is 166.8 ft2/gal (paint column, Oct. 2003)', () => {
  expect((coverageM2PerL(0.52, 1.5 * 25.4, 0.3) * L_PER_US_GALLON) / M2_PER_FT2).toBeCloseTo(166.8, 0);
});

test('shelves carry 40 and 50 lb/ft2, 1.92 and 2.39 kN/m2 (Architectural Woodwork Standards 2009, read)', () => {
  expect(shelfLoad('general')!.pressureMpa * 1000).toBeCloseTo(1.92, 2);
  expect(shelfLoad('books')!.pressureMpa * 1000).toBeCloseTo(2.39, 2);
  expect(MOST_ON_A_SHELF.kg).toBeCloseTo(90.7, 1);
  expect(sagLimit('standard')!.over).toBe(144);
});

test('books weigh up to 25 lb a running foot, 365 N/m', () => {
  expect(ROW_OF_BOOKS.nPerMm * 1000).toBeCloseTo(365, 0);
});

test('k_def of solid wood and plywood (EN 1995-1-1 Table 3.2, read)', () => {
  expect(creepFactor('solid')!.kDef).toEqual([0.6, 0.8, 2]);
  expect(creepFactor('plywood')!.kDef).toEqual([0.8, 1, 2.5]);
});

test('every finish with drying oil warns of its cloths', () => {
  for (const f of FINISHES.filter((f) => f.id.match(/oil|wiping/)))
    expect(f.cautions, f.id).toContain(OILY_CLOTHS);
});

const TABLES: readonly (readonly (Sourced & { readonly id: string })[])[] = [
  ADHESIVES,
  CAUTIONS,
  CREEP_FACTORS,
  FINISHES,
  SAG_LIMITS,
  SHELF_LOADS,
  STABILITY_LOADS,
  TOOL_ACCURACIES,
];

test('every row has an id of its own and a source, and what is from memory is not called confirmed', () => {
  for (const table of TABLES) {
    expect(new Set(table.map((r) => r.id)).size).toBe(table.length);
    for (const row of table) {
      expect(row.source, row.id).toMatch(/\S/);
      if (row.source.includes('from memory')) expect(row.confirmed, row.id).toBe(false);
    }
  }
});

test('every row is found by its id, and an unknown id finds nothing', () => {
  const finders = [adhesive, caution, creepFactor, finish, sagLimit, shelfLoad, stabilityLoad, toolAccuracy];
  finders.forEach((find, i) => {
    for (const row of TABLES[i]!) expect(find(row.id)).toBe(row);
    expect(find('no-such-thing')).toBeUndefined();
  });
});

test('ranges run upward', () => {
  const ranges: Range[] = ADHESIVES.flatMap((a) => [
    a.openMinutes,
    a.assemblyMinutes,
    a.clampMinutes,
    a.spreadGM2,
  ]);
  for (const f of FINISHES)
    ranges.push(f.coats, f.recoatHours, f.readyHours, f.fullCureDays, f.solidsByVolume);
  for (const [least, greatest] of ranges) expect(least).toBeLessThanOrEqual(greatest);
  for (const a of ADHESIVES) expect(a.openMinutes[1]).toBeLessThanOrEqual(a.assemblyMinutes[1]);
});

test('rules of setting-out each have an id of their own and a source, and proportions are proper fractions', () => {
  const rows = Object.values(SETTING_OUT);
  expect(new Set(rows.map((r) => r.id)).size).toBe(rows.length);
  for (const r of rows) {
    expect(r.source).toMatch(/\S/);
    if ('of' in r) for (const n of r.of) expect(Number.isInteger(n) && n > 0).toBe(true);
    else expect(Number.isInteger(r.value)).toBe(true);
  }
});

test('rules of setting-out keep to the trade figures (common practice)', () => {
  const s = SETTING_OUT;
  const mm = (t: number) => t / 3200;
  expect([mm(s.carrySpacingLeast.value), mm(s.carrySpacingMost.value)]).toEqual([150, 200]);
  expect([mm(s.baseSpacingLeast.value), mm(s.baseSpacingMost.value)]).toEqual([300, 400]);
  expect(mm(s.panelEdgeEnd.value)).toBe(50);
  expect(mm(s.panelEdgeCentre.value)).toBe(1);
  expect(mm(s.farFace.value)).toBe(3);
  const [over, under] = s.rabbetDepth.of;
  expect(over / under).toBeGreaterThanOrEqual(1 / 2);
  expect(over / under).toBeLessThanOrEqual(2 / 3);
  // Its sine and cosine are those of the pocket's 15 degrees.
  expect(s.pocketLean.of[0] / s.pocketLean.of[1]).toBeCloseTo(Math.cos(Math.PI / 12), 6);
  expect(s.pocketDrift.of[0] / s.pocketDrift.of[1]).toBeCloseTo(Math.sin(Math.PI / 12), 6);
});
