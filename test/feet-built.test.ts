import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { curesThatHelp } from '../src/plan/cures-that-help.ts';
import { setOut } from '../src/setting-out/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { cured } from './checks/checked-job.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard on blocks of strip. */
function onFeet(change: (job: PlainJob) => void): PlainJob {
  const job = smallJob();
  const stock = [{ id: 'block-length', length: '2400 mm', price: 9 }];
  job.shop.rack.lots.push({ ...lotOf(job, 'ash18'), id: 'block', nominal: '40 mm', width: '60 mm', stock });
  const { id, parent } = recordOf(job, 'base');
  job.design.records = job.design.records.filter((r) => r.kind !== 'base');
  job.design.records.push({ id, kind: 'base', parent, form: 'feet', strip: 'block', setback: '40 mm' });
  addScrews(job, 'countersunk', [30, 40, 50, 60], { diameter: '4.5 mm', head: '8.8 mm' });
  addScrews(job, 'pocket', [25, 38, 45, 63], { diameter: '4 mm', head: '8.8 mm' });
  change(job);
  return job;
}

const orderOf = (of: ReturnType<typeof built>) => of.build.operations.map((o) => o.id);

describe('feet', () => {
  test.each([
    ['rabbet', {}],
    ['dado', {}],
    ['dowels', {}],
    ['mitre', {}],
    ['mitre', { inMitres: 'biscuits' }],
    ['pocket-screws', {}],
    ['face-screws', { bottom: 'under' }],
  ])('go under the case when it stands, joined by %s %j', async (joints, more) => {
    const of = built(
      equipped(
        onFeet((job) => {
          job.design.records = job.design.records.filter((r) => r.id !== 'lipping');
          Object.assign(recordOf(job, 'case'), { joints, ...more });
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(orderOf(of).indexOf('G1/set')).toBeGreaterThan(orderOf(of).indexOf('A2/set'));
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each(['dado', 'tongue', 'dowels', 'face-screws'])(
    'under a narrow space behind a panel, where no driver would reach once that is in, go under the loose bottom: %s',
    async (joints) => {
      const of = built(
        equipped(
          onFeet((job) => {
            job.design.records = job.design.records.filter((r) => r.kind !== 'shelf');
            Object.assign(recordOf(job, 'case'), { joints });
            Object.assign(recordOf(job, 'inside'), { split: 'back' });
            Object.assign(recordOf(job, 'right'), { size: '60 mm' });
          }),
        ),
      );
      expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
      const early = of.drawn.joints.filter((j) => j.loose).map((j) => j.mate);
      expect(early.length).toBeGreaterThan(0);
      expect(early.every((id) => id.includes('back-foot'))).toBe(true);
      const order = orderOf(of);
      const mark = of.drawn.parts.find((p) => p.id === early[0])!.mark;
      expect(order.indexOf(`B1/screw-${mark}`)).toBeGreaterThan(order.indexOf(`${mark}/set`));
      expect(order.indexOf('B1/set')).toBeGreaterThan(order.indexOf('B1/feet-cure'));
      expect(await dryFaults(of)).toEqual([]);
    },
  );
});

test('feet under the tracks of sliding doors, where no screw finds wood, are told how far back they would', () => {
  const read = checkJob(
    onFeet((job) => {
      job.design.records = job.design.records.filter((r) => r.kind !== 'shelf' && r.id !== 'lipping');
      const slides = { id: 'slides', kind: 'sliding-doors', parent: 'case', board: 'birch6' };
      job.design.records.push({ ...slides, over: ['left', 'right'], count: 3, tracks: 3 });
      Object.assign(recordOf(job, 'base'), { setback: '30 mm', setbackBack: '40 mm' });
    }),
  );
  if (!read.ok) throw new Error(read.snags[0]!.sentence);
  const drawn = setOut(read.job);
  const met = curesThatHelp(read.job, drawn).filter((s) => s.code === 'screws.meet');
  expect(met.length).toBeGreaterThan(0);
  for (const { cures } of met) {
    expect(cures[0]!.says).toMatch(
      /^Set the base back by \d+ mm, clear of what is bored or let into the bottom\.$/,
    );
    const after = setOut(cured(read.job, cures[0]!.edits!));
    expect(after.snags.filter((s) => s.level === 'stop')).toEqual([]);
  }
});
