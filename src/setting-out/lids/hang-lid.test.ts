import { expect, test } from 'vitest';
import { chestJob } from '../../../test/lids/chest-job.ts';
import { setOut } from '../index.ts';

test.each([
  ['in grooves', { fitting: 'groove', setIn: undefined }],
  ['in rabbets that are set in', { fitting: 'rabbet', setIn: '20 mm' }],
])('a lid hung on a back %s would come down on the sides as it opens, and is refused', (_, back) => {
  const [snag, ...others] = setOut(
    chestJob({ back: JSON.parse(JSON.stringify({ board: 'ply15', ...back })) }),
  ).snags.filter((s) => s.level === 'stop');
  expect(others).toEqual([]);
  expect(snag!.code).toBe('lids.back-set-in');
  const changes = Object.fromEntries(snag!.cures[0]!.edits!.map((e) => [e.field, e.value]));
  expect(setOut(chestJob({ back: { board: 'ply15', ...changes } })).snags).toEqual([]);
});
