import { expect, test } from 'vitest';
import { ticks } from '../measure/index.ts';
import { type Direction, opposite, thirdDirection, toPiece } from './index.ts';

const DIRECTIONS: readonly Direction[] = ['+x', '-x', '+y', '-y', '+z', '-z'];

test('there are 24 right-angled ways to stand, all right-handed', () => {
  let ways = 0;
  for (const first of DIRECTIONS)
    for (const second of DIRECTIONS) {
      if (first[1] === second[1]) {
        expect(() => thirdDirection(first, second)).toThrow();
        continue;
      }
      ways++;
      const third = thirdDirection(first, second);
      expect(thirdDirection(second, third)).toBe(first);
      expect(thirdDirection(second, first)).toBe(opposite(third));
    }
  expect(ways).toBe(24);
  expect(thirdDirection('+x', '+y')).toBe('+z');
});

test('a box of a part’s own stands in the piece by the part’s place', () => {
  const t = (a: number, b: number, c: number) => [ticks(a), ticks(b), ticks(c)] as const;
  const place = { origin: t(100, 50, 10), length: '+z', width: '-y', thickness: '+x' } as const;
  const box = { min: t(1, 2, 3), max: t(11, 22, 33) };
  expect(toPiece(place, box)).toEqual({ min: [103, 28, 11], max: [133, 48, 21] });
});
