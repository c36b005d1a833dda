import { expect, test } from 'vitest';
import { codes, setOutInput } from '../../test/checks/checked-job.ts';
import { slidingJob } from '../../test/doors/sliding-job.ts';
import { sliding } from './sliding.ts';

test('the radio station’s doors slide well', () => {
  expect(sliding(setOutInput(slidingJob()))).toEqual([]);
});

test('a door less than half as wide as high is to be minded (common practice)', () => {
  const narrow = setOutInput(slidingJob({ station: { width: '700 mm', height: '700 mm' } }));
  expect(codes(sliding(narrow))).toEqual(['sliding.racks']);
});

test('so is one that weighs more than 10 kg, or is thinner than 4.5 mm (common practice, from memory)', () => {
  const input = setOutInput(slidingJob());
  expect(codes(sliding({ ...input, weigh: (id) => ({ ...input.weigh(id), kg: 12 }) }))).toEqual([
    'sliding.heavy',
  ]);
  expect(codes(sliding(setOutInput(slidingJob({ birch9: { thickness: '4 mm' } }))))).toEqual([
    'sliding.thin',
  ]);
});

test('doors whose handles stop one another so early that little stands open are told', () => {
  const across = { row: 'across', count: 2, fromLeft: '60 mm', fromRight: '60 mm' };
  const [snag, ...more] = sliding(setOutInput(slidingJob({ doors: { closes: 'all' }, pulls: across })));
  expect(more).toEqual([]);
  expect(snag).toMatchObject({ code: 'sliding.hardly-opens', level: 'mind' });
  expect(snag!.sentence).toBe(
    'The doors of “doors” leave only 18 mm open at once: handles stop those before them.',
  );
  // Two doors with one handle each, at the edges in sight, leave nearly a door's width.
  expect(sliding(setOutInput(slidingJob({ doors: { closes: 'all' } })))).toEqual([]);
});
