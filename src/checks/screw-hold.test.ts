import { expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { glazeCabinet, setOutInput, withPlaces } from '../../test/checks/checked-job.ts';
import { screwHold } from './screw-hold.ts';

test('the screws of the glaze cabinet hold its jars and buckets', () => {
  expect(screwHold(setOutInput(glazeCabinet()))).toEqual([]);
});

test('a share of the load is held against 2850 G2 D pounds an inch (NDS 2018 eq. 12.2-2), worked by hand', () => {
  // Birch plywood: 680 / 1120 is G 0.61; 4 mm is 0.15748 in: 167.0 lb/in, 29.25 N/mm. The screw is 32 mm long and 18
  // of it stay in the shelf, so 14 mm of thread hold 409.5 N.
  const job = bookcase({ width: '336 mm', load: '500 kg' });
  const input = { ...setOutInput(job), weigh: () => ({ kg: 0, centreMm: [0, 0, 0] as const }) };
  const count = input.setOut.fasteners.filter((f) => f.through[0] === 'shelf/shelf').length;
  expect(count).toBeGreaterThan(2);
  const snag = screwHold(input).find((s) => s.where.record === 'shelf')!;
  expect(snag).toMatchObject({ code: 'screws.hold-too-little', level: 'mind' });
  expect(snag.figures!.limit).toBeCloseTo(409.5, 0);
  expect(snag.figures!.value).toBeCloseTo((500 * 9.80665) / count, 1);
});

test('the load that it says would do, does', () => {
  const job = bookcase({ width: '336 mm', load: '500 kg' });
  const says = screwHold(setOutInput(job))
    .find((s) => s.where.record === 'shelf')!
    .cures.at(-1)!.says;
  const kg = Number(/no more than (\d+) kg/.exec(says)![1]);
  const at = (load: number) =>
    screwHold(setOutInput(withPlaces(job, { 'design/records/shelf/load': `${load} kg` }))).filter(
      (s) => s.where.record === 'shelf',
    );
  expect(at(kg)).toEqual([]);
  expect(at(kg + 2)).not.toEqual([]);
});

test('a bottom that stands on a base does not hang on its screws', () => {
  const heavy = withPlaces(glazeCabinet(), { 'design/records/case/load': '2000 kg' });
  expect(screwHold(setOutInput(heavy))).toEqual([]);
});
