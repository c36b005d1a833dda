import { describe, expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../test/generate/small-job.ts';
import { applyEdit, checkJob, inverseOf, type JobDocument } from '../job/index.ts';
import { explain } from '../measure/index.ts';
import { setOut } from './index.ts';

function sound(change: (job: PlainJob) => void = () => {}): JobDocument {
  const job = smallJob();
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

function mm(piece: ReturnType<typeof setOut>, name: string): number {
  return piece.ledger.ticks(piece.dimensions.get(name)!) / 3200;
}

const measured = (values: Record<string, string>) => (job: PlainJob) => {
  job.work = { measured: values };
};

describe('what was measured', () => {
  test('stands in place of what was derived, and what depends on it follows', () => {
    const before = setOut(sound());
    const after = setOut(sound(measured({ 'left.width': '449.2 mm' })));
    expect(mm(before, 'left.width')).toBe(448);
    expect(mm(after, 'left.width')).toBe(449.2);
    expect(mm(after, 'right.width')).toBe(448 - 1.2);
    expect(mm(after, 'shelf 1 in left.length')).toBe(449.2);
    expect(mm(after, 'overall.width')).toBe(1000);
    expect(after.snags).toEqual([]);
    expect(explain(after.ledger, after.dimensions.get('left.width')!, { unit: 'mm', step: 0.1 })).toEqual([
      '449.2 mm  measured: left.width',
    ]);
  });

  test('of the whole inside brings the sides and what stands round them with it', () => {
    const piece = setOut(
      sound((job) => {
        job.design.records = job.design.records.filter((r) => r.id !== 'top');
        measured({ 'inside.width': '965 mm', 'inside.height': '683.3 mm' })(job);
      }),
    );
    expect(piece.snags).toEqual([]);
    expect(mm(piece, 'inside.width')).toBe(965);
    expect(mm(piece, 'overall.width')).toBe(965 + 2 * 18);
    expect(mm(piece, 'overall.height')).toBeCloseTo(80 + 683.3 + 2 * 18, 9);
    expect(mm(piece, 'bottom.length')).toBe(965);
  });

  test('under a name that isn’t there is told with the nearest names', () => {
    const { snags } = setOut(sound(measured({ 'letf.width': '450 mm' })));
    expect(snags).toHaveLength(1);
    expect(snags[0]).toMatchObject({
      code: 'measured.no-such-dimension',
      where: { path: 'work/measured/letf.width' },
      sentence: '“letf.width” was measured, but nothing here is called that.',
    });
    expect(snags[0]!.cures[0]!.says).toContain('“left.width”');
  });

  test.each([
    ['A1.thickness', 'Measure “birch18.thickness”: all that is made of the lot follows.'],
    ['left.height', 'Measure “inside.height”, which it is the same as.'],
    ['left.depth', 'Change the size in the design.'],
    ['left side.cut length', 'Measure “left side.length”, once it is made.'],
    ['E1.length gap', 'Measure the parts and the opening on either side of it: a gap is what they leave.'],
  ])('of %s is refused with what to do instead', (name, cure) => {
    const { snags } = setOut(sound(measured({ [name]: '450 mm' })));
    expect(snags.map((s) => [s.code, s.cures[0]!.says])).toEqual([['measured.not-used', cure]]);
  });

  test('of every opening of a split must add up', () => {
    const { snags } = setOut(sound(measured({ 'left.width': '449 mm', 'right.width': '446 mm' })));
    expect(snags.map((s) => s.code)).toEqual(['openings.do-not-add-up']);
  });

  test('comes before a formula', () => {
    const piece = setOut(
      sound((job) => {
        recordOf(job, 'left').size = 'width / 2';
        measured({ 'left.width': '449 mm' })(job);
      }),
    );
    expect(mm(piece, 'left.width')).toBe(449);
  });
});

test('edits set and clear a measured value, and undo leads back to the very document', () => {
  const job = sound();
  const set = { edit: 'set', at: 'work/measured/left.width', value: '449 mm' } as const;
  const first = applyEdit(job, set);
  if (!first.ok) throw new Error(first.snags[0]!.sentence);
  expect(first.job.work).toEqual({ measured: { 'left.width': '449 mm' } });
  const back = applyEdit(first.job, inverseOf(job, set));
  expect(back).toEqual({ ok: true, job });
  const cleared = applyEdit(first.job, { edit: 'set', at: 'work/measured/left.width' });
  expect(cleared.ok && cleared.job.work).toEqual({ measured: {} });
  expect(applyEdit(first.job, { ...set, value: 'about 449' }).ok).toBe(false);
});
