import { expect, test } from 'vitest';
import { fits } from '../src/checks/fits.ts';
import { checkJob } from '../src/job/index.ts';
import { toMm } from '../src/measure/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

function withWork(work: object, change: (job: PlainJob) => void = () => {}) {
  const plain = smallJob();
  plain.work = work;
  change(plain);
  const read = checkJob(plain);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('; '));
  const piece = setOut(read.job);
  const cut = (id: string) => {
    const { length, width } = piece.parts.find((p) => p.id === id)!.cut;
    return [length, width].map((t) => toMm(piece.ledger.ticks(t)));
  };
  return { piece, cut, lost: fits({ job: read.job, setOut: piece }).filter((s) => s.code === 'fits.lost') };
}

test('a bottom that came out short: the shelf that is still to be cut follows, what nothing rests on stays', () => {
  const before = withWork({});
  const [bottom] = before.cut('case/bottom');
  const after = withWork({ measured: { 'bottom.length': `${bottom! - 1.5} mm` } });
  expect(after.piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
  expect(after.cut('case/bottom')[0]).toBe(bottom! - 1.5);
  expect(after.cut('shelf/shelf')[0]).toBeLessThanOrEqual(before.cut('shelf/shelf')[0]! - 1.5);
  expect(after.cut('shelves/shelf:1')).toEqual(before.cut('shelves/shelf:1'));
  expect(after.lost).toEqual([]);
});

test('what is ticked stays as it was made, by any of its names, whatever is drawn now', () => {
  const done = [{ id: 'S1/crosscut-E1', sizes: { 'E1.length': '447.5 mm' } }];
  const wider = withWork({ done }, (job) => {
    job.design.records[0]!.width = '1010 mm';
  });
  expect(wider.cut('shelves/shelf:1')[0]).toBe(447.5);
  expect(wider.cut('shelves/shelf:2')[0]).toBeGreaterThan(450);
});

test('a made part that no longer fits is named, with what to cut it to', () => {
  const { lost } = withWork({ measured: { 'E1.length': '451 mm' } });
  expect(lost).toHaveLength(1);
  expect(lost[0]).toMatchObject({ level: 'stop', where: { path: 'work/measured/E1.length' } });
  // The bay is 448: 3 mm too long, of which half a millimetre can be sprung in.
  expect(lost[0]!.figures).toMatchObject({ value: -3, limit: -0.5, margin: -2.5 });
  expect(lost[0]!.cures[0]!.says).toBe('Cut E1 down to 448 mm.');
});

test('a made part that came out too short is to be cut anew', () => {
  const { lost } = withWork({ measured: { 'E1.length': '440 mm' } });
  expect(lost[0]!.cures[0]!.says).toBe('Cut E1 anew, 448 mm.');
});

test('a lot that measures otherwise on the bench: everything made of it follows', () => {
  const { piece } = withWork({ measured: { 'birch18.thickness': '17.6 mm' } });
  expect(piece.snags.filter((s) => s.code.startsWith('measured.'))).toEqual([]);
  const side = piece.parts.find((p) => p.id === 'case/left-side')!;
  expect(toMm(piece.ledger.ticks(side.thickness))).toBe(17.6);
});

test('a side that came out short: the other side and the divider follow, so that the top lies level', () => {
  const before = withWork({});
  const [side] = before.cut('case/left-side');
  for (const [made, other] of [
    ['left side', 'case/right-side'],
    ['right side', 'case/left-side'],
  ] as const) {
    const after = withWork({ measured: { [`${made}.length`]: `${side! - 2} mm` } });
    expect(after.cut(other)[0]).toBe(side! - 2);
    expect(after.cut('upright/divider')[0]).toBeLessThanOrEqual(before.cut('upright/divider')[0]! - 1.5);
    expect(after.lost).toEqual([]);
  }
});

test('two sides that were made of different lengths are named', () => {
  const [side] = withWork({}).cut('case/left-side');
  const work = (right: number) => ({
    measured: { 'left side.length': `${side} mm`, 'right side.length': `${right} mm` },
  });
  expect(withWork(work(side! - 0.5)).lost).toEqual([]);
  const { lost } = withWork(work(side! - 3));
  expect(lost.map((s) => s.where.path)).toContain('work/measured/right side.length');
  expect(lost[0]!.sentence).toContain('as long as that');
});
