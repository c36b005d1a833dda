import { expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from './index.ts';

function told(change: (job: PlainJob) => void): string[] {
  const job = smallJob();
  change(job);
  const read = checkJob(job);
  return read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}: ${s.sentence}`);
}

const size = (job: PlainJob, id: string, value: string) =>
  job.design.records.push({ id, kind: 'size', value });

test('formulas that rest on one another in any order are fine', () => {
  expect(
    told((job) => {
      size(job, 'gap', '2 * reveal');
      size(job, 'reveal', 'left.width / 100');
      recordOf(job, 'right').size = 'left.height / 2';
      recordOf(job, 'shelf').at = 'max(right.height / 3, 100 mm) - gap';
    }),
  ).toEqual([]);
});

test('every unknown name is told with its place and the nearest names', () => {
  expect(
    told((job) => {
      recordOf(job, 'base').setback = 'gapp + widht';
      size(job, 'gap', '3 mm');
    }),
  ).toEqual([
    'formula.no-such-name design/records/base/setback: `gapp + widht`: nothing is called “gapp”, at character 1.',
    'formula.no-such-name design/records/base/setback: `gapp + widht`: nothing is called “widht”, at character 8.',
  ]);
});

test('a name that formulas know already is refused', () => {
  expect(told((job) => size(job, 'max', '3 mm'))[0]).toContain('formula.name-taken design/records/max/id');
});

test('all circles are told, each with its way round', () => {
  expect(
    told((job) => {
      size(job, 'a', 'b + 1 mm');
      size(job, 'b', 'c / 2');
      size(job, 'c', 'a - 1 mm');
      size(job, 'alone', 'alone');
    }),
  ).toEqual([
    'formula.circular design/records/a/value: `b + 1 mm` rests, in the end, on itself: a/value needs b/value needs c/value needs a/value.',
    'formula.circular design/records/alone/value: `alone` rests, in the end, on itself: alone/value needs alone/value.',
  ]);
});

test('a share rests on the fixed sizes beside it and on what stands round the case', () => {
  expect(
    told((job) => {
      recordOf(job, 'left').size = 'right.width / 2';
      recordOf(job, 'top').overhangSides = 'inside.width / 100';
      recordOf(job, 'base').height = 'inside.height / 10';
    }).sort(),
  ).toEqual([
    'formula.circular design/records/base/height: `inside.height / 10` rests, in the end, on itself: base/height needs inside.height needs base/height.',
    'formula.circular design/records/left/size: `right.width / 2` rests, in the end, on itself: left/size needs right.width needs left/size.',
    'formula.circular design/records/top/overhangSides: `inside.width / 100` rests, in the end, on itself: top/overhangSides needs inside.width needs top/overhangSides.',
  ]);
});
