import { expect, test } from 'vitest';
import { comesAlong } from './comes-along.ts';

test('what is screwed to a door, and to that, comes along; what stands beside stays', () => {
  const screws = [
    { parts: ['U1', 'V1'] },
    { parts: ['K1', 'U1'] },
    { parts: ['K1', 'K1'] },
    { parts: ['A1', 'A1'] },
    { parts: ['A1', 'B1'] },
  ] as const;
  expect([...comesAlong(['K1'], screws)].sort()).toEqual(['K1', 'U1', 'V1']);
  expect([...comesAlong([], screws)]).toEqual([]);
});
