import { expect, test } from 'vitest';
import { pantry } from '../../test/pins/pantry-job.ts';
import { setOut } from '../setting-out/index.ts';
import { overallSpan } from './measured-spans.ts';

test('the overall height of what stands on levellers is measured from the floor, not from its lowest board', () => {
  const { from, to } = overallSpan(setOut(pantry()), 2);
  expect([from, to]).toEqual([0, 1240 * 3200]);
});
