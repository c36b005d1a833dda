import { describe, expect, test } from 'vitest';
import { fromInches, toInches } from '../measure/index.ts';
import {
  boardFeet,
  dressed,
  HARDWOOD_THICKNESSES,
  hardwoodTally,
  SOFTWOOD_THICKNESSES,
  SOFTWOOD_WIDTHS,
} from './lumber.ts';

const foot = (n: number) => fromInches(12 * n);

// PS 20 Table 3 (read).
test.each([
  ['1', '2', 3 / 4, 1.5],
  ['1', '3', 3 / 4, 2.5],
  ['1', '4', 3 / 4, 3.5],
  ['1', '6', 3 / 4, 5.5],
  ['1', '8', 3 / 4, 7.25],
  ['1', '10', 3 / 4, 9.25],
  ['1', '12', 3 / 4, 11.25],
  ['2', '4', 1.5, 3.5],
])('a softwood %s x %s', (thick, wide, thickness, width) => {
  expect(toInches(dressed(SOFTWOOD_THICKNESSES, thick)!.dressed)).toBe(thickness);
  expect(toInches(dressed(SOFTWOOD_WIDTHS, wide)!.dressed)).toBe(width);
});

test('hardwood 4/4 planed on two sides is 13/16 in, 8/4 is 1-3/4 (NHLA, read)', () => {
  expect(toInches(dressed(HARDWOOD_THICKNESSES, '4/4')!.dressed)).toBe(13 / 16);
  expect(toInches(dressed(HARDWOOD_THICKNESSES, '8/4')!.dressed)).toBe(1.75);
  expect(dressed(HARDWOOD_THICKNESSES, '9/4')).toBeUndefined();
});

describe('hardwood tally (NHLA rules; example of the American hardwood export council, and worked ones, read)', () => {
  test('2 x 6-1/4 in x 8 ft: surface measure 4, 8 board feet', () => {
    expect(hardwoodTally(fromInches(2), fromInches(6.25), foot(8))).toEqual({
      surfaceMeasure: 4,
      boardFeet: 8,
    });
  });

  test('6-1/2 in x 8 ft is 4, 10 in x 13 ft is 11', () => {
    expect(hardwoodTally(fromInches(1), fromInches(6.5), foot(8)).surfaceMeasure).toBe(4);
    expect(hardwoodTally(fromInches(1), fromInches(10), foot(13)).surfaceMeasure).toBe(11);
  });

  test('odd inches of length do not count, and thin stock counts as one inch', () => {
    expect(hardwoodTally(fromInches(0.5), fromInches(6), fromInches(107))).toEqual({
      surfaceMeasure: 4,
      boardFeet: 4,
    });
  });
});

test('1 x 6 in x 96 in is 4 board feet; one board foot is 1 x 12 x 12 in', () => {
  expect(boardFeet(fromInches(1), fromInches(6), fromInches(96))).toBe(4);
  expect(boardFeet(fromInches(1), fromInches(12), fromInches(12))).toBe(1);
});
