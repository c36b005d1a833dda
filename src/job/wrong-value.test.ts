import { expect, test } from 'vitest';
import { lotOf, recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from './check-job.ts';

test('a value that is not known, or of another kind, is told in words, with what to write', () => {
  const job = smallJob();
  Object.assign(recordOf(job, 'case'), { inMitres: 'tape', splineBoard: 4 });
  Object.assign(recordOf(job, 'lipping'), { sides: ['back'] });
  Object.assign(lotOf(job, 'birch18').stock[0]!, { goodFaces: 'two' });
  const read = checkJob(job);
  const told = read.ok ? [] : read.snags.map((s) => `${s.sentence} ${s.cures[0]!.says}`);
  expect(told.sort()).toEqual([
    'Entry 1 should be “front”, “left”, “right”, “upper” or “lower”, but is “back”. Write “front”, “left”, “right”, “upper” or “lower”.',
    '“goodFaces” should be “one” or “none”, but is “two”. Write “one” or “none”.',
    '“inMitres” should be “biscuits” or “spline”, but is “tape”. Write “biscuits” or “spline”.',
    '“splineBoard” should be a text in quotes, but is 4. Write a text in quotes.',
  ]);
});
