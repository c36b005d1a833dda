import { expect, test } from 'vitest';
import { built } from '../../test/build/built.ts';
import { equipped } from '../../test/generate/equipped.ts';
import { recordOf, smallJob } from '../../test/generate/small-job.ts';

const cards = (height: string) => {
  const job = smallJob();
  recordOf(job, 'cupboard').height = height;
  return built(equipped(job)).build.operations;
};
const NO_ROOM = /^A drill finds no room behind (it|them|one of them|\d of them): .*\{2\}/;

test('a card names the angled head where a drill finds no room behind its screws, and it is gathered first', () => {
  const low = cards('420 mm');
  const asking = low.filter((o) => o.lines.some((line) => NO_ROOM.test(line)));
  expect(asking.length).toBeGreaterThan(0);
  for (const o of asking) expect(o.lengths).toHaveLength(3);
  expect(low.find((o) => o.kind === 'gather')!.lines.join()).toContain('An angled head for the drill');
});

test('nothing is said of it where a drill finds room', () => {
  const high = cards('1800 mm');
  expect(high.some((o) => o.kind === 'screw')).toBe(true);
  expect(high.flatMap((o) => o.lines).join()).not.toContain('angled head');
});
