import { expect, test } from 'vitest';
import type { Operation } from '../src/build/index.ts';
import { fromMm } from '../src/measure/index.ts';
import { type Built, built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

const FOOT = {
  id: 'foot',
  kind: 'leveller',
  diameter: '10 mm',
  deep: '12 mm',
  width: '30 mm',
  lowest: '25 mm',
  highest: '50 mm',
};

/** The small cupboard on levellers, its shop equipped. */
function onLevellers(base: object, foot: object = FOOT, more: (job: PlainJob) => void = () => {}): Built {
  const job = smallJob();
  const { records } = job.design;
  records[records.findIndex((r) => r.id === 'base')] = {
    id: 'base',
    kind: 'base',
    parent: 'case',
    form: 'levellers',
    ...base,
  };
  job.shop.rack.fixings = [foot];
  more(job);
  return built(equipped(job));
}

test('a cupboard 950 mm wide stands on six levellers turned right in, 40 mm inside, no more than 800 mm apart', async () => {
  const of = onLevellers({});
  expect(of.drawn.snags).toEqual([]);
  const mm = (t: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(t) / 3200;
  const [levellers] = of.drawn.levellers;
  expect(mm(levellers!.height)).toBe(25);
  expect(levellers!.at.filter((_, i) => i % 2 === 0).map((at) => mm(at.x) - 25)).toEqual([40, 475, 910]);
  expect(mm(of.drawn.parts.find((p) => p.name === 'left side')!.place.origin[2])).toBe(25);
  // 800 mm over all, less 25 mm below and a top of 18 mm.
  expect(mm(of.drawn.parts.find((p) => p.name === 'left side')!.length)).toBe(757);
  expect(await dryFaults(of)).toEqual([]);
});

test('the dry fit notices holes that are not there, of another depth, or that no leveller fills', async () => {
  const of = onLevellers({});
  const swap = (act: string, fields: object) => (o: Operation) =>
    o.does.act === act && !('open' in o.does) ? { ...o, does: { ...o.does, ...fields } as never } : o;
  const codes = async (act: string, fields: object) =>
    (await dryFaults(of, swap(act, fields))).map((f) => f.code);
  expect(await codes('levellers', { count: 4 })).toEqual(['no-hole']);
  const deep = of.drawn.ledger.row({
    id: 'test.deep',
    value: fromMm(16),
    says: 'deeper',
    source: 'this test',
  });
  expect(await codes('levellers', { deep })).toEqual(['no-hole', 'no-screw']);
  expect(await codes('levellers', { act: 'other', on: ['case'] })).toEqual(['no-screw']);
});

test('levellers take up what the floor falls: 12 mm over 1000 mm, each by its share', () => {
  const fall = (job: PlainJob) =>
    job.design.records.push({ id: 'room', kind: 'room', floorFall: '12 mm', fallsTo: 'right' });
  const { build, drawn } = onLevellers({ height: '30 mm' }, FOOT, fall);
  expect(drawn.snags).toEqual([]);
  const level = build.operations.find((o) => o.id === 'home/level')!;
  // 65, 500 and 935 mm from the left of 1000 mm: 0.78, 6 and 11.22 mm of the fall.
  const printed = level.lengths.map((t) => drawn.ledger.ticks(t) / 3200);
  expect(printed).toEqual([31, 36, 41, 31, 36, 41, 12]);
  expect(level.lines[1]).toContain('in front, from the left, to {0}, {1} and {2} from the floor');
});

test.each([
  ['levellers.too-short', { height: '20 mm' }, FOOT],
  ['levellers.too-short', { height: '60 mm' }, FOOT],
  ['levellers.too-deep', {}, { ...FOOT, deep: '16 mm' }],
  ['base.no-room', { setback: '160 mm' }, FOOT],
  ['levellers.none', {}, { id: 'plug', kind: 'plug', diameter: '10 mm', length: '8 mm' }],
])('%s', (code, base, foot) => {
  const { drawn } = onLevellers(base, foot);
  expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toEqual([code]);
});

test('the longest reach is not enough where the floor falls more than is left', () => {
  const fall = (job: PlainJob) =>
    job.design.records.push({ id: 'room', kind: 'room', floorFall: '30 mm', fallsTo: 'left' });
  const { drawn } = onLevellers({ height: '30 mm' }, FOOT, fall);
  expect(drawn.snags.map((s) => s.code)).toEqual(['levellers.too-short']);
});

test('a skirting as high as the levellers, or behind which they stand, is told', () => {
  const wall = (height: string) => (job: PlainJob) => {
    Object.assign(job.design.records[0]!, { skirtingHeight: height, skirtingDepth: '15 mm' });
  };
  const codes = (height: string, base: object) =>
    onLevellers(base, FOOT, wall(height)).drawn.snags.map((s) => s.code);
  expect(codes('20 mm', {})).toEqual([]);
  expect(codes('40 mm', {})).toEqual(['base.skirting']);
  // Its foot, 15 mm about the middle, comes to 15 mm from the back; the skirting wants 18.
  expect(codes('20 mm', { setbackBack: '30 mm' })).toEqual(['base.skirting']);
});

test('a piece too shallow for two rows of levellers is told so, and not to set them back less', () => {
  const shallow = (depth: string) =>
    onLevellers({}, FOOT, ({ design }) => {
      Object.assign(design.records.find((r) => r.kind === 'piece')!, { depth });
    }).drawn.snags.filter((s) => s.code === 'base.no-room');
  const [told] = shallow('90 mm');
  expect(told!.sentence).toContain('too shallow for levellers');
  const wanting = Number(/^Make the piece (\d+) mm deeper/.exec(told!.cures[0]!.says)![1]);
  // As much deeper there is room for them at its very edges; what is left to say is that they are set back too far.
  const then = shallow(`${90 + wanting} mm`);
  expect(then.every((s) => s.sentence.includes('set back so far'))).toBe(true);
});
