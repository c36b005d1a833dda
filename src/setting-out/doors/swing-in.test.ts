import { describe, expect, test } from 'vitest';
import { lackToSwingIn } from './swing-in.ts';

const door = { door: 500, thick: 9, clear: 493, upper: 9, play: 1, reach: 26 };

describe('swinging a door in', () => {
  test('a door of usual height goes in', () => {
    expect(lackToSwingIn(door)).toBeLessThanOrEqual(0);
  });

  test('a low and thick one jams between the walls of its upper groove', () => {
    const low = { door: 107, thick: 18, clear: 100, upper: 9, play: 0.8, reach: 60 };
    expect(lackToSwingIn(low)).toBeGreaterThan(0);
    expect(lackToSwingIn({ ...low, play: 2.5, upper: 10 })).toBeLessThanOrEqual(0);
  });

  test('what is higher than the way from the lower edge to the floor of the upper groove lacks the rest', () => {
    expect(lackToSwingIn({ ...door, door: 504 })).toBeGreaterThanOrEqual(2);
  });
});
