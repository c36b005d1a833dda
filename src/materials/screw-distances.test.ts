import { expect, test } from 'vitest';
import { isSolid, SCREW_DISTANCES } from './screw-distances.ts';

test('in solid wood: 10 diameters from the end, 2.5 from a side, 10 apart along the grain and 5 across (NDS 2018 commentary Table C12.1.5.7, from memory)', () => {
  const times = (row: { readonly of: readonly [number, number] }) => row.of[0] / row.of[1];
  expect(times(SCREW_DISTANCES.solidEnd)).toBe(10);
  expect(times(SCREW_DISTANCES.solidSide)).toBe(2.5);
  expect(times(SCREW_DISTANCES.solidAlong)).toBe(10);
  expect(times(SCREW_DISTANCES.solidAcross)).toBe(5);
});

test('into a panel’s edge: 1 in, 25 mm, from its corner (common practice)', () => {
  expect(SCREW_DISTANCES.panelCorner.value / 3200).toBe(25);
});

test('plywood is no solid wood, ash is', () => {
  expect([isSolid('birch-plywood'), isSolid('ash-white')]).toEqual([false, true]);
});
