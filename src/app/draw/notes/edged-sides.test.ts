import { expect, test } from 'vitest';
import { edgedSides } from './edged-sides.ts';

test('sides that the app does not offer are said in words, and may be chosen against', () => {
  expect(edgedSides(['left', 'front']).at(-1)).toEqual(['left,front', 'Only left ends and front edges']);
  expect(edgedSides(['upper']).at(-1)).toEqual(['upper', 'Only upper ends']);
  const offered = edgedSides(undefined);
  expect(offered.map(([value]) => value)).toEqual([
    '',
    'front,left,right',
    'front,upper',
    'front,left,right,upper',
  ]);
  expect(edgedSides(['front', 'upper'])).toEqual(offered);
});
