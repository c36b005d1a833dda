import { expect, test } from 'vitest';
import { box, group, piece } from '../../../test/build/row-of-cases.ts';
import { addScrews, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

/** Two cases of boards that measure 17.8 mm, with countersunk screws of such lengths (mm) besides that of 20. */
function twoCases(lengths: readonly number[], units: 'mm' | 'in' = 'mm'): SetOut {
  const job = smallJob();
  Object.assign(job.shop, { units });
  job.design.records = [piece, group, box('a'), box('b')];
  const lots = (job.shop.rack as unknown as { lots: { id: string; thickness?: string }[] }).lots;
  lots.find((lot) => lot.id === 'birch18')!.thickness = '17.8 mm';
  addScrews(job, 'countersunk', lengths, { diameter: '4 mm', head: '8 mm' });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const told = (of: SetOut) => of.snags.find((s) => s.code === 'screws.none-to-connect');

test('what holds two cases together stands 9 mm in the second, and ends 3 mm before its far face', () => {
  // 17.8 + 9 and 17.8 + 17.8 - 3 mm.
  const snag = told(twoCases([26, 33]))!;
  expect(snag.sentence).toContain('is 26.8 to 32.6 mm long');
  expect(snag.cures[0]!.says).toBe('Put a countersunk screw 26.8 to 32.6 mm long on the shop’s list.');
  expect(told(twoCases([27]))).toBeUndefined();
  expect(told(twoCases([32]))).toBeUndefined();
});

test('a shop that works in inches reads them in inches', () => {
  // 26.8 mm is 1.0551", 32.6 mm is 1.2835": the next 1/32 within.
  expect(told(twoCases([26, 33], 'in'))!.sentence).toContain('is 1 1/16" to 1 9/32" long');
});
