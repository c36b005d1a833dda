import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { explain, leavesOf } from '../../measure/index.ts';
import { setOut } from '../index.ts';

function drawn(change: (job: PlainJob) => void) {
  const job = smallJob();
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

function ticksOf(piece: ReturnType<typeof setOut>, name: string): number {
  return piece.ledger.ticks(piece.dimensions.get(name)!);
}

test('a bay by formula, with the other resting on it', () => {
  const piece = drawn((job) => {
    job.design.records.push({ id: 'gap', kind: 'size', value: '3 mm' });
    recordOf(job, 'left').size = 'width / 3 - gap';
    recordOf(job, 'shelf').at = 'right.height / 2 - 9 mm';
  });
  // 1000 / 3 - 3 mm, and of 950 - 2 x 18 - 18 what that leaves.
  expect(ticksOf(piece, 'left.width')).toBe(Math.round((1000 * 3200) / 3) - 3 * 3200);
  expect(ticksOf(piece, 'right.width')).toBe(896 * 3200 - ticksOf(piece, 'left.width'));
  const data = piece.ledger.data();
  expect(
    leavesOf(data, piece.dimensions.get('left.width')!).map((l) => `${l.kind} ${l.id} ${l.note}`),
  ).toEqual(['document design/records/cupboard/width 1000 mm', 'document design/records/gap/value 3 mm']);
  expect(explain(piece.ledger, piece.dimensions.get('left.width')!, { unit: 'mm', step: 0.1 })).toEqual([
    'about 330.3 mm  width / 3 - gap, at design/records/left/size',
    '  = about 333.3 mm  width / 3, at design/records/left/size',
    '    = 1/3 of 1000 mm  typed as 1000 mm at design/records/cupboard/width',
    '  - 3 mm  typed as 3 mm at design/records/gap/value',
  ]);
  expect(piece.snags).toEqual([]);
});

test('a formula may use what is set out after it', () => {
  const piece = drawn((job) => {
    recordOf(job, 'base').setback = 'left.width / 10';
    recordOf(job, 'left').size = 'right.height / 2';
  });
  expect(ticksOf(piece, 'left.width')).toBe(ticksOf(piece, 'right.height') / 2);
  expect(piece.snags).toEqual([]);
});

test('a size from the narrowest doorway on the way home, by its name or as the least of all', () => {
  const piece = drawn((job) => {
    Object.assign(job.shop, {
      wayHome: {
        doors: [
          { id: 'hall', width: '800 mm', height: '1990 mm' },
          { id: 'stair', width: '770 mm', height: '2020 mm' },
        ],
      },
    });
    recordOf(job, 'left').size = 'doorway.through / 2';
    recordOf(job, 'shelf').at = 'stair.height / 10';
  });
  // 770 mm less 15 mm for hands on either side.
  expect(ticksOf(piece, 'left.width')).toBe((740 / 2) * 3200);
  expect(ticksOf(piece, 'doorway.height')).toBe(1990 * 3200);
  expect(piece.snags).toEqual([]);
  const leaves = leavesOf(piece.ledger.data(), piece.dimensions.get('left.width')!);
  expect(leaves.map((l) => `${l.kind} ${l.id}`)).toEqual([
    'document shop/wayHome/doors/hall/width',
    'document shop/wayHome/doors/stair/width',
    'row way.hands',
  ]);
});

test('a doorway that isn’t on the way is a name that nothing has; a record of its name comes first', () => {
  const job = smallJob();
  recordOf(job, 'left').size = 'doorway.through / 2';
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['formula.no-such-name']);
  const piece = drawn((j) => {
    Object.assign(j.shop, { wayHome: { doors: [{ id: 'right', width: '800 mm', height: '1990 mm' }] } });
    recordOf(j, 'left').size = 'right.height / 2';
  });
  expect(ticksOf(piece, 'left.width')).toBe(ticksOf(piece, 'right.height') / 2);
});

test('what comes to nothing, or to too much, is a stop at its place and nothing is built of it', () => {
  const piece = drawn((job) => {
    recordOf(job, 'base').height = 'width - 1000 mm';
    recordOf(job, 'left').size = 'right.depth - 1 m';
    recordOf(job, 'top').overhangFront = '500 * width';
  });
  expect(piece.parts).toEqual([]);
  expect(piece.snags.map((s) => `${s.code} ${s.where.path}: ${s.sentence}`).sort()).toEqual([
    'formula.no-size design/records/base/height: `width - 1000 mm` comes to 0 mm, which nothing can be made to.',
    'formula.no-size design/records/left/size: `right.depth - 1 m` comes to -662.5 mm, which nothing can be made to.',
    'formula.no-size design/records/top/overhangFront: `500 * width` comes to 500000 mm; the most there is here is 10 m.',
  ]);
});

test('whatever is asked, a formula is exact where it can be and else right to the tick', () => {
  const small = fc.integer({ min: 1, max: 60 });
  fc.assert(
    fc.property(small, small, small, fc.constantFrom('up', 'down', 'nearest'), (a, b, c, how) => {
      const piece = drawn((job) => {
        for (const [id, value] of [
          ['p', `${a} mm * ${b} / ${c}`],
          ['q', `max(p, ${b} mm) + min(p, ${c} mm)`],
          ['r', `${how}(q, 1/16 in)`],
        ] as const)
          job.design.records.push({ id, kind: 'size', value });
        recordOf(job, 'base').setback = 'min(r, 40 mm) / 10 + 36 mm';
      });
      const of = (id: string) => ticksOf(piece, `${id}.value`);
      expect(Math.abs(of('p') - (a * b * 3200) / c)).toBeLessThanOrEqual(0.5);
      expect(of('q')).toBe(Math.max(of('p'), b * 3200) + Math.min(of('p'), c * 3200));
      const step = of('q') / 5080;
      expect(of('r')).toBe(
        5080 * (how === 'up' ? Math.ceil(step) : how === 'down' ? Math.floor(step) : Math.floor(step + 0.5)),
      );
    }),
    { numRuns: 30 },
  );
});
