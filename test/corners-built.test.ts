import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { checkJob } from '../src/job/index.ts';
import { toMm } from '../src/measure/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const FACE = {
  id: 'face-60',
  kind: 'countersunk',
  length: '60 mm',
  diameter: '4 mm',
  head: '8 mm',
  have: 200,
};

/** The small cupboard with a lid of its own, joined and backed as said; bottom and lid run through or not. */
function jobWith(joints: string, fitting: string, corners: object, without: readonly string[] = ['top']) {
  const job = equipped(smallJob()) as PlainJob;
  job.design.records = job.design.records.filter((r) => !without.includes(String(r.id)));
  Object.assign(recordOf(job, 'case'), { joints, ...corners });
  recordOf(job, 'back').fitting = fitting;
  job.shop.rack.screws.push(FACE);
  job.shop.rack.bits.push({ id: 'straight-6', kind: 'straight', diameter: '6 mm' });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

function planOf(...of: Parameters<typeof jobWith>): Plan {
  const planning = planJob(jobWith(...of), { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const BOTH = { bottom: 'under', lid: 'over' };

describe('which panel runs through at a corner', () => {
  test.each([
    ['pocket-screws', 'applied', BOTH],
    ['pocket-screws', 'groove', { lid: 'over' }],
    ['face-screws', 'rabbet', BOTH],
    ['face-screws', 'applied', { bottom: 'under' }],
    ['rabbet', 'applied', BOTH],
    ['rabbet', 'rabbet', BOTH],
    ['dado', 'groove', BOTH],
    ['stopped-dado', 'rabbet', { lid: 'over' }],
  ])('%s, the back by %s, %j: it is built as drawn', (joints, fitting, corners) => {
    const plan = planOf(joints, fitting, corners);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.fits).toBe(true);
  });

  test('tongued sides stand in the bottom: a lid between them slides in last, from behind', () => {
    const plan = planOf('tongue', 'applied', { bottom: 'under' }, ['top', 'lipping']);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const order = plan.build.operations.map((o) => o.id);
    expect(order.indexOf('C1/set')).toBeGreaterThan(order.indexOf('A2/set'));
  });

  test('not where its front edging would run into the tongue of a divider: that is told, and what to do', () => {
    const piece = setOut(jobWith('tongue', 'applied', { bottom: 'under' }));
    const [stop] = piece.snags.filter((s) => s.level === 'stop');
    expect(stop?.code).toBe('joints.cannot-close');
    expect(stop?.sentence).toContain('tongue of the first divider');
    for (const cure of stop!.cures) {
      const [edit] = cure.edits!;
      const { value } = edit as { value: string };
      const cured = edit!.field === 'bottom' ? ['tongue', value] : [value, 'under'];
      const again = setOut(jobWith(cured[0]!, 'applied', { bottom: cured[1] }));
      expect(again.snags.filter((s) => s.level === 'stop')).toEqual([]);
    }
  });

  test('the panel that runs through has the full width, the sides stand on it and under it, the inside stays', () => {
    const [plain, through] = [{}, BOTH].map((c) => setOut(jobWith('pocket-screws', 'applied', c)));
    const length = (piece: typeof plain, id: string) =>
      toMm(piece!.ledger.ticks(piece!.parts.find((p) => p.id === id)!.length));
    expect(length(through, 'case/bottom')).toBe(length(plain, 'case/bottom') + 36);
    expect(length(through, 'case/lid')).toBe(length(plain, 'case/lid') + 36);
    expect(length(through, 'case/left-side')).toBe(length(plain, 'case/left-side') - 36);
    const sizes = (piece: typeof plain) =>
      piece!.openings.map((o) => [o.width, o.height, o.depth].map((t) => toMm(piece!.ledger.ticks(t))));
    expect(sizes(through)).toEqual(sizes(plain));
  });

  test('screws through a bottom that runs under the sides are out of sight', () => {
    const piece = setOut(jobWith('face-screws', 'applied', BOTH));
    const sight = (id: string) => piece.joints.find((j) => j.id === id)!.heads!.sight;
    expect(sight('case/bottom>case/left-side')).toBe('out-of-sight');
    expect(sight('case/lid>case/left-side')).toBe('seen');
  });

  test('an applied top leaves no lid to speak of', () => {
    const job = smallJob();
    recordOf(job, 'case').lid = 'over';
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.lid-and-top']);
  });
});
