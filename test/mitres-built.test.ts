import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { checkJob } from '../src/job/index.ts';
import { fromMm, toMm } from '../src/measure/index.ts';
import { dryFitInput, type Plan, planJob } from '../src/plan/index.ts';
import { glueAreaMm2 } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function jobWith(change: (job: PlainJob) => void): PlainJob {
  const job = equipped(smallJob()) as PlainJob;
  recordOf(job, 'case').joints = 'mitre';
  job.design.records = job.design.records.filter((r) => r.id !== 'lipping');
  change(job);
  return job;
}

function planOf(change: (job: PlainJob) => void = () => {}): Plan {
  const read = checkJob(jobWith(change));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const withLid = (fitting: string) => (job: PlainJob) => {
  job.design.records = job.design.records.filter((r) => r.id !== 'top');
  recordOf(job, 'back').fitting = fitting;
};

describe('a case with mitred corners', () => {
  test.each([
    ['under an applied top', () => {}],
    ['with a lid, its back in rabbets', withLid('rabbet')],
    ['with a lid, its back in grooves', withLid('groove')],
    ['with a lid, its back laid on', withLid('applied')],
  ])('%s: it is built as drawn', (_, change) => {
    const plan = planOf(change);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
  });

  test('every panel is as long as the case is over its tips; a 45 degree face is 1.414 times the thickness (geometry)', () => {
    const plan = planOf(withLid('applied'));
    const { ledger, parts, joints } = plan.setOut;
    const mm = (id: string) => toMm(ledger.ticks(parts.find((p) => p.id === id)!.length));
    expect(mm('case/bottom')).toBe(1000);
    expect(mm('case/lid')).toBe(1000);
    expect(mm('case/left-side')).toBe(720);
    const corners = joints.filter((j) => j.kind === 'mitre' && j.duty === 'carries');
    expect(corners).toHaveLength(4);
    const depth = toMm(ledger.ticks(parts.find((p) => p.id === 'case/left-side')!.width));
    for (const j of corners) expect(glueAreaMm2(plan.setOut, j)).toBeCloseTo(depth * 18 * Math.SQRT2, -1);
  });

  test('a mitre on the wrong face, or a blank without its allowance, is noticed', () => {
    const plan = planOf(withLid('applied'));
    const { build, setOut, breakdown } = plan;
    const codes = (of: (act: (typeof build.operations)[number]['does']) => typeof act) => {
      const operations = build.operations.map((o) => ({ ...o, does: of(o.does) }));
      const run = dryFit({
        ...dryFitInput(plan.job, setOut, breakdown, build, solids),
        build: { stock: build.stock, operations },
      });
      let step = run.next();
      while (!step.done) step = run.next();
      return step.value.faults.map((f) => f.code);
    };
    const isPanel = (marks: readonly string[]) => marks.includes('A1');
    expect(
      codes((a) =>
        a.act === 'bevel' && isPanel(a.workpieces)
          ? { ...a, fullFace: a.fullFace === 'show' ? 'under' : 'show' }
          : a,
      ),
    ).not.toEqual([]);
    const more = setOut.ledger.row({
      id: 'mistake',
      value: fromMm(3),
      says: 'a mistake',
      source: 'the test',
    });
    expect(
      codes((a) =>
        a.act === 'bevel' && isPanel(a.workpieces) ? { ...a, at: setOut.ledger.sum('off', a.at, more) } : a,
      ),
    ).not.toEqual([]);
  });

  test.each([
    [
      'a bottom that runs through',
      (job: PlainJob) => Object.assign(recordOf(job, 'case'), { bottom: 'under' }),
    ],
    ['a kick board', (job: PlainJob) => Object.assign(recordOf(job, 'base'), { form: 'toe-kick' })],
    [
      'edging',
      (job: PlainJob) =>
        job.design.records.push({ id: 'lipping', kind: 'edging', parent: 'case', strip: 'ash6' }),
    ],
  ])('%s is refused', (_, change) => {
    const read = checkJob(jobWith(change));
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.mitred-case']);
  });

  test('a saw that can’t reach through at 45 degrees is told', () => {
    const plan = planOf((job) => {
      withLid('applied')(job);
      lotOf(job, 'birch18').thickness = '18 mm';
      const saw = job.shop.tools.find((t) => t.kind === 'circular-saw')!;
      saw.reach45 = '15 mm';
    });
    expect(plan.snags.map((s) => s.code)).toContain('tools.saw-shallow-tilted');
  });
});
