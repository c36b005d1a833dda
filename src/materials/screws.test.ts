import { describe, expect, test } from 'vitest';
import { fromInches, fromMm, toInches } from '../measure/index.ts';
import { POCKET_HOLE, pocketReach, pocketScrewLength, pocketThread } from './pocket-holes.ts';
import { pilotShare, screwFigure, shankShare, WOOD_SCREWS, woodScrew, woodScrewOf } from './screws.ts';

test.each([
  [4, 0.112],
  [8, 0.164],
  [14, 0.242],
  [2, 0.086],
  [10, 0.19],
  [24, 0.372],
])('a number %d screw is %d in thick (ASME B18.6.1, read)', (gauge, inches) => {
  const screw = woodScrew(`wood-screw-${gauge}`)!;
  expect(Math.abs(toInches(screw.major.value) - inches)).toBeLessThan(0.0005);
  expect(screwFigure(screw.major).confirmed).toBe(true);
});

test.each([
  [6, 0.279],
  [8, 0.332],
  [12, 0.438],
])('the flat head of a number %d is %d in across (ASME B18.6.1 reprint, read)', (gauge, inches) => {
  expect(toInches(woodScrew(`wood-screw-${gauge}`)!.head!.value)).toBeCloseTo(inches, 4);
});

test('a root is 76 to 84% of the outside; NDS 2018 Table L3 from memory, so a figure is not vouched for', () => {
  const roots = WOOD_SCREWS.filter((s) => s.id.match(/-\d+$/) && s.root);
  expect(roots.length).toBe(11);
  for (const s of roots) {
    expect(s.root!.value / s.major.value).toBeGreaterThan(0.76);
    expect(s.root!.value / s.major.value).toBeLessThan(0.84);
    expect(screwFigure(s.root!).confirmed).toBe(false);
  }
});

test('a screw is found by its diameter, in either system', () => {
  expect(woodScrewOf(fromMm(4))!.id).toBe('wood-screw-4mm');
  expect(woodScrewOf(fromInches(0.164))!.id).toBe('wood-screw-8');
  expect(woodScrewOf(fromMm(4.2))!.id).toBe('wood-screw-8');
  expect(woodScrewOf(fromMm(12))).toBeUndefined();
  expect(woodScrew('wood-screw-11')).toBeUndefined();
});

test('ids of rows are each used once', () => {
  const rows = WOOD_SCREWS.flatMap((s) => [s.major, s.root, s.head]).filter((r) => r !== undefined);
  expect(new Set(rows.map((r) => r.id)).size).toBe(rows.length);
});

describe('lead holes (NDS 12.1.5, as a design handbook restates it, read)', () => {
  test('withdrawal: G 0.68 takes 90% of the root, 0.55 takes 70%, 0.43 none', () => {
    expect(pilotShare(0.68, 'withdrawal')!.of).toEqual([9, 10]);
    expect(pilotShare(0.55, 'withdrawal')!.of).toEqual([7, 10]);
    expect(pilotShare(0.43, 'withdrawal')).toBeUndefined();
    expect(pilotShare(0.6, 'withdrawal')!.of).toEqual([7, 10]);
    expect(pilotShare(0.5, 'withdrawal')!.of).toEqual([7, 10]);
  });

  test('sideways: as wide as root and shank from G 0.6, 7/8 of them below', () => {
    expect(pilotShare(0.6, 'lateral')!.of).toEqual([1, 1]);
    expect(pilotShare(0.59, 'lateral')!.of).toEqual([7, 8]);
    expect(shankShare(0.6).of).toEqual([1, 1]);
    expect(shankShare(0.59).of).toEqual([7, 8]);
  });
});

describe('pocket screws (lengths and sizes: common practice)', () => {
  test.each([
    ['1/2', 0.5, 1],
    ['5/8', 0.625, 1],
    ['3/4', 0.75, 1.25],
    ['7/8', 0.875, 1.5],
    ['1', 1, 1.5],
    ['1-1/4', 1.25, 2],
    ['1-3/8', 1.375, 2],
    ['1-1/2', 1.5, 2.5],
  ])('stock of %s in', (_, stock, screw) => {
    expect(pocketScrewLength(fromInches(stock))!.value).toBe(fromInches(screw));
  });

  test('18 mm plywood takes the screw of 3/4 in stock, however thin the sheet came', () => {
    for (const mm of [17.1, 17.6, 18, 18.7])
      expect(pocketScrewLength(fromMm(mm))!.value).toBe(fromInches(1.25));
    expect(pocketScrewLength(fromMm(15))!.value).toBe(fromInches(1));
  });

  test('thinner than 12 mm or thicker than 40 mm is not pocketed', () => {
    expect(pocketScrewLength(fromMm(11.9))).toBeUndefined();
    expect(pocketScrewLength(POCKET_HOLE.thinnest.value)).toBeDefined();
    expect(pocketScrewLength(fromMm(40.1))).toBeUndefined();
  });

  test('a 1.25 in screw with 0.75 in inside goes 0.483 in deep and drifts 0.129 in (geometry at 15 degrees)', () => {
    const { deepMm, driftMm } = pocketReach(1.25 * 25.4, 0.75 * 25.4);
    expect(deepMm / 25.4).toBeCloseTo(0.483, 3);
    expect(driftMm / 25.4).toBeCloseTo(0.129, 3);
  });

  test('fine thread in hardwood, coarse elsewhere', () => {
    expect(pocketThread('hardwood')).toBe('fine');
    expect(pocketThread('panel')).toBe('coarse');
    expect(pocketThread('softwood')).toBe('coarse');
  });
});
