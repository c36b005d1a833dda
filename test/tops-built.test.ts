import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { type Built, built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard with another top. */
function topped(top: object, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.shop.rack.lots.push({
    ...lotOf(job, 'birch18'),
    id: 'top24',
    nominal: '24 mm',
    stock: [{ id: 'top24-sheet', length: '2500 mm', width: '1250 mm', price: 120 }],
  });
  Object.assign(lotOf(job, 'ash6'), { width: '30 mm' });
  const screw = (kind: string, long: number, thick: string) =>
    job.shop.rack.screws.push({
      id: `${kind}-${long}`,
      kind,
      length: `${long} mm`,
      diameter: thick,
      head: '8.8 mm',
    });
  for (const long of [25, 38, 45, 63]) screw('pocket', long, '4 mm');
  for (const long of [30, 40, 50, 60]) screw('countersunk', long, '4.5 mm');
  const { records } = job.design;
  records[records.findIndex((r) => r.id === 'top')] = {
    id: 'top',
    kind: 'top',
    parent: 'case',
    board: 'top24',
    ...top,
  };
  change(job);
  return job;
}

const mmIn =
  ({ drawn }: Built) =>
  (name: string) =>
    drawn.ledger.ticks(drawn.dimensions.get(name)!) / 3200;

describe('an inset top', () => {
  test.each([
    'pocket-screws',
    'face-screws',
    'rabbet',
    'dado',
    'stopped-dado',
    'tongue',
    'dowels',
    'biscuits',
  ])('lies between the sides, level with their upper ends, joined by %s as the case is', async (joints) => {
    const of = built(
      equipped(
        topped({ fit: 'inset', load: '30 kg' }, (j) => Object.assign(recordOf(j, 'case'), { joints })),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level !== 'note')).toEqual([]);
    const mm = mmIn(of);
    expect(mm('overall.width')).toBe(1000);
    // Up to the sides’ upper ends, 800 mm; the base is 80 mm, the bottom 18 mm, the top 24 mm.
    expect(mm('inside.height')).toBe(800 - 80 - 18 - 24);
    const top = of.drawn.parts.find((p) => p.record === 'top')!;
    expect(of.drawn.ledger.ticks(top.thickness) / 3200).toBe(24);
    expect(
      of.drawn.joints.filter((j) => [j.part, j.mate].includes(top.id) && /side/.test(j.part + j.mate)),
    ).toHaveLength(2);
    expect(of.drawn.surfaces.find((s) => s.part === top.id)).toMatchObject({ loadKg: 30, record: 'top' });
    expect(await dryFaults(of)).toEqual([]);
  });

  test('of solid wood is told: it is held at both ends', () => {
    const solid = (j: PlainJob) => Object.assign(lotOf(j, 'top24'), { material: 'ash-white' });
    const { drawn } = built(equipped(topped({ fit: 'inset' }, solid)));
    expect(drawn.snags.map((s) => [s.code, s.level])).toEqual([['top.held-across-grain', 'mind']]);
  });

  test('takes a cable like any other top', () => {
    const cable = (j: PlainJob) =>
      j.design.records.push({
        id: 'lead',
        kind: 'cable',
        parent: 'top',
        plug: 'usb-c',
        fromLeft: '90 mm',
        fromBack: '80 mm',
      });
    const { drawn } = built(equipped(topped({ fit: 'inset' }, cable)));
    expect(drawn.snags).toEqual([]);
    expect(drawn.parts.find((p) => p.record === 'top')!.features.some((f) => f.id.endsWith('#lead'))).toBe(
      true,
    );
  });
});

describe('a flush top', () => {
  test('lies on the case and comes level with it all round; a strip edges its front alone', async () => {
    const of = built(
      equipped(
        topped({ fit: 'flush', edging: 'ash6', edgedSides: 'front' }, (j) => {
          Object.assign(lotOf(j, 'ash6'), { width: '30 mm' });
        }),
      ),
    );
    expect(of.drawn.snags).toEqual([]);
    const part = (role: string) => of.drawn.parts.find((p) => p.role === role)!;
    const t = (x: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(x) / 3200;
    expect([t(part('top').length), t(part('top').width)]).toEqual([1000, 350 - 6]);
    const side = part('left-side');
    expect(t(side.place.origin[0]) - t(side.thickness)).toBe(0);
    const strips = of.drawn.parts.filter((p) => p.role.startsWith('top edging'));
    expect(strips.map((s) => [s.role, t(s.length), s.features.length])).toEqual([
      ['top edging-front', 1000, 0],
    ]);
    expect(await dryFaults(of)).toEqual([]);
  });
});

test.each([
  ['flush', { overhangSides: '20 mm' }],
  ['inset', { overhangFront: '20 mm' }],
  ['inset', { edging: 'ash6' }],
  ['inset', { hinged: true }],
])('a top that is %s can’t say so', (fit, more) => {
  const read = checkJob(topped({ fit, ...more }));
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toContain('design.top-fit');
});

test('no top goes between mitred panels, nor between the sides of several cases', () => {
  const mitred = checkJob(
    topped({ fit: 'inset' }, (j) => {
      Object.assign(recordOf(j, 'case'), { joints: 'mitre' });
      j.design.records = j.design.records.filter((r) => r.kind !== 'edging');
    }),
  );
  expect(mitred.ok ? [] : mitred.snags.map((s) => s.code)).toEqual(['design.mitred-case']);
  const several = checkJob(
    topped({ fit: 'inset', parent: 'row' }, (j) => {
      j.design.records.push({ id: 'row', kind: 'group', parent: 'cupboard', lay: 'across' });
      Object.assign(recordOf(j, 'case'), { parent: 'row' });
      j.design.records.push({ id: 'other', kind: 'case', parent: 'row', board: 'birch18' });
    }),
  );
  expect(several.ok ? [] : several.snags.map((s) => s.code)).toEqual(['design.top-fit']);
});
