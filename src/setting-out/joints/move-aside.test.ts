import { expect, test } from 'vitest';
import { SETTING_OUT } from '../../materials/index.ts';
import { fromMm, Ledger, toMm } from '../../measure/index.ts';
import { clearPlaces } from './move-aside.ts';
import { spaceScrews } from './screw-spacing.ts';

/** Where the screws of a base's joint of 400 mm end up when some places are taken, mm. Straight, they stand at 50 and 350. */
function places(isTaken: (mm: number) => boolean, first = 0): number[] | undefined {
  const l = new Ledger();
  const low = l.document('low end', fromMm(1000), '1000 mm');
  const length = l.document('length', fromMm(400), '400 mm');
  const spacing = spaceScrews(l, 'base', length, l.row(SETTING_OUT.setStep));
  const found = clearPlaces(l, {
    spacing,
    low,
    high: l.sum('high end', low, length),
    first,
    isFree: (at) => !isTaken(toMm(at) - 1000),
  });
  return found?.map((t) => toMm(l.ticks(t)) - 1000);
}

const straight = places(() => false)!;
const near = (mm: number, place: number) => Math.abs(mm - place) < 5;

test('a row that meets nothing stands straight', () => {
  expect(straight).toEqual([50, 350]);
});

test('a row that meets something moves as a whole, the shortest way', () => {
  expect(places((mm) => near(mm, 50))).toEqual([56, 356]);
  expect(places((mm) => near(mm, 50) || near(mm, 356))).toEqual([44, 344]);
});

test('a screw moves on its own where the row can’t', () => {
  // Whichever way the row goes, one of its screws meets something.
  const blocked = (mm: number) => mm < 55 || (mm > 352 && mm < 400);
  expect(places(blocked)).toEqual([56, 350]);
});

test('no screw is moved closer to the end than its duty allows, 35 mm for a base', () => {
  expect(places((mm) => mm > 40 && mm < 75)).toEqual([38, 338]);
  // By half steps where whole ones find nothing.
  expect(places((mm) => mm > 37 && mm < 90)).toEqual([35, 335]);
  expect(places((mm) => mm > 34 && mm < 90)).toBeUndefined();
});

test('where there is no place at all, none is given', () => {
  expect(places(() => true)).toBeUndefined();
});

test('a row may begin a step on', () => {
  expect(places(() => false, 1)).toEqual([56, 356]);
});

test('screws of one row that move on their own don’t come to the same place', () => {
  // A foot of 170 mm: its two screws stand close together, and only a narrow place between them is free.
  const l = new Ledger();
  const low = l.document('low end', fromMm(1000), '1000 mm');
  const length = l.document('length', fromMm(170), '170 mm');
  const spacing = spaceScrews(l, 'foot', length, l.row(SETTING_OUT.setStep));
  expect(spacing.at).toHaveLength(2);
  const free = (from: number, to: number, apart?: number) =>
    clearPlaces(l, {
      ...(apart === undefined ? {} : { apart: fromMm(apart) }),
      spacing,
      low,
      high: l.sum('high end', low, length),
      first: 0,
      isFree: (at) => toMm(at) - 1000 >= from && toMm(at) - 1000 <= to,
    });
  expect(free(82, 90)).toBeUndefined();
  const [a, b] = free(72, 100)!.map((t) => toMm(l.ticks(t)));
  expect(Math.abs(a! - b!)).toBeGreaterThanOrEqual(12);
  // Slots are longer than screws are thick.
  const [c, d] = free(60, 120, 40)!.map((t) => toMm(l.ticks(t)));
  expect(Math.abs(c! - d!)).toBeGreaterThanOrEqual(40);
  expect(free(72, 100, 40)).toBeUndefined();
});
