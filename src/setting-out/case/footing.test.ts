import { expect, test } from 'vitest';
import { type PlainJob, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { setOut } from '../index.ts';

function checked(change: (job: PlainJob) => void) {
  const job = smallJob();
  change(job);
  return checkJob(job);
}

function setOutOf(change: (job: PlainJob) => void) {
  const read = checked(change);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  const mm = (t: typeof piece.overall.width) => piece.ledger.ticks(t) / 3200;
  const part = (name: string) => piece.parts.find((p) => p.name === name)!;
  return { piece, mm, part };
}

function withBase(fields: Record<string, unknown>) {
  return (job: PlainJob) => {
    const { records } = job.design;
    records[records.findIndex((r) => r.id === 'base')] = {
      id: 'base',
      kind: 'base',
      parent: 'case',
      ...fields,
    };
  };
}

const KICK = { form: 'toe-kick', board: 'birch18', height: '80 mm', setback: '50 mm' };

test('a kick board stands between sides that run to the floor, under the bottom', () => {
  const { piece, mm, part } = setOutOf(withBase(KICK));
  expect(piece.snags).toEqual([]);
  const [side, bottom, kick] = [part('left side'), part('bottom'), part('kick board')];
  // 800 mm less a top of 18 mm.
  expect([mm(side.place.origin[2]), mm(side.length)]).toEqual([0, 782]);
  expect(mm(bottom.place.origin[2])).toBe(80);
  expect([mm(kick.length), mm(kick.width)]).toEqual([mm(bottom.length), 80]);
  expect(mm(kick.place.origin[1]) - mm(kick.thickness)).toBe(50);
  const joined = piece.joints.filter((j) => j.part === kick.id).map((j) => [j.side, j.fasteners.length > 0]);
  expect(joined).toEqual([
    ['start', true],
    ['end', true],
  ]);
  const inside = piece.openings.find((o) => o.id === 'inside')!;
  expect(mm(inside.height)).toBe(782 - 80 - 18);
});

test('sides that run to the floor are notched for the skirting, 3 mm larger than it (common practice)', () => {
  const { piece, mm, part } = setOutOf((job) => {
    withBase(KICK)(job);
    Object.assign(job.design.records[0]!, { skirtingHeight: '70 mm', skirtingDepth: '15 mm' });
  });
  expect(piece.snags).toEqual([]);
  const notches = ['left side', 'right side'].map((name) =>
    part(name).features.flatMap((f) =>
      f.kind === 'notch' ? [[f.end, f.edge, mm(f.length), mm(f.width)]] : [],
    ),
  );
  expect(notches).toEqual([[['start', 'far', 73, 18]], [['start', 'near', 73, 18]]]);
});

test('a base before the skirting, and a skirting above the base, are told', () => {
  const codes = (height: string, base: Record<string, unknown>) =>
    setOutOf((job) => {
      withBase(base)(job);
      Object.assign(job.design.records[0]!, { skirtingHeight: height, skirtingDepth: '25 mm' });
    }).piece.snags.map((s) => [s.code, s.level]);
  const frame = { board: 'birch18', height: '80 mm', setback: '40 mm' };
  expect(codes('70 mm', frame)).toEqual([]);
  expect(codes('70 mm', { ...frame, setbackBack: '10 mm' })).toEqual([['base.skirting', 'mind']]);
  expect(codes('90 mm', KICK)).toEqual([['base.skirting', 'mind']]);
});

test('feet of strip on edge, as high as the strip is wide, each with two screws from inside', () => {
  const { piece, mm } = setOutOf((job) => {
    withBase({ form: 'feet', strip: 'foot', setback: '40 mm' })(job);
    job.shop.rack.lots.push({
      id: 'foot',
      name: 'foot',
      material: 'ash-white',
      form: 'strip',
      nominal: '40 mm',
      width: '60 mm',
      stock: [{ id: 'foot-length', length: '2400 mm', price: 9 }],
    });
    job.shop.rack.screws.push({
      id: 'face-50',
      kind: 'countersunk',
      length: '50 mm',
      diameter: '4.5 mm',
      head: '8.8 mm',
    });
  });
  expect(piece.snags).toEqual([]);
  const feet = piece.parts.filter((p) => p.role.includes('foot'));
  // 950 mm between the sides' outer faces: feet at both ends and one pair between.
  expect(feet).toHaveLength(4);
  expect(feet.map((f) => mm(f.width))).toEqual([60, 60, 60, 60]);
  expect(piece.joints.filter((j) => j.duty === 'foot').map((j) => j.fasteners.length)).toEqual([2, 2, 2, 2]);
  expect(mm(piece.parts.find((p) => p.name === 'left side')!.place.origin[2])).toBe(60);
});

test('rails between all uprights that reach the top, right under it and before the back', () => {
  const { piece, mm } = setOutOf((job) => {
    job.design.records = job.design.records.filter((r) => r.id !== 'base');
    job.design.records.push({ id: 'rails', kind: 'hanging', parent: 'case', board: 'birch18' });
  });
  expect(piece.snags).toEqual([]);
  const rails = piece.parts.filter((p) => p.record === 'rails');
  expect(rails.map((r) => [r.mark, mm(r.width)])).toEqual([
    ['T1', 90],
    ['T2', 90],
  ]);
  expect(mm(rails[0]!.place.origin[2]) + 90).toBe(782);
  expect(
    rails.every((r) => piece.joints.filter((j) => j.part === r.id && j.fasteners.length > 0).length === 3),
  ).toBe(true);
});

test.each([
  ['document.missing-field', { form: 'toe-kick', height: '80 mm' }],
  ['document.missing-field', { form: 'feet' }],
  ['design.base-form', { form: 'feet', strip: 'ash6', height: '80 mm' }],
  ['design.base-form', { ...KICK, setbackBack: '10 mm' }],
  ['document.wrong-form', { form: 'feet', strip: 'birch18' }],
])('%s is told before anything is set out', (code, fields) => {
  const read = checked(withBase(fields));
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toContain(code);
});

test('sides that run to the floor don’t stand on the bottom', () => {
  const read = checked((job) => {
    withBase(KICK)(job);
    Object.assign(job.design.records.find((r) => r.kind === 'case')!, { bottom: 'under' });
  });
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.base-form']);
});

test('a case stands or hangs', () => {
  const read = checked((job) =>
    job.design.records.push({ id: 'rails', kind: 'hanging', parent: 'case', board: 'birch18' }),
  );
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.hung-and-based']);
});
