import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Operation } from '../src/build/index.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { checkJob } from '../src/job/index.ts';
import { dryFitInput, type Plan, planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** The small cupboard with long screws, in a shop that is otherwise equipped; tools left out by kind. */
function planOf(joints: string | undefined, without: readonly string[] = [], plugs = false): Plan {
  const job = equipped(smallJob()) as PlainJob;
  if (joints !== undefined) recordOf(job, 'case').joints = joints;
  job.shop.tools = job.shop.tools.filter((t) => !without.includes(String(t.kind)));
  job.shop.rack.screws.push({
    id: 'face-60',
    kind: 'countersunk',
    length: '60 mm',
    diameter: '4 mm',
    head: '8 mm',
    price: 0.1,
  });
  if (plugs)
    job.shop.rack.fixings = [{ id: 'plug', kind: 'plug', diameter: '10 mm', length: '8 mm', have: 99 }];
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

describe('a cupboard screwed through its faces', () => {
  test.each([
    ['asked for, with a jig for its top and base', 'face-screws', []],
    ['without a jig, top and base as well', 'face-screws', ['pocket-jig']],
    ['by what the tools allow', undefined, ['pocket-jig', 'router']],
    ['rabbets at the corners, without a jig', 'rabbet', ['pocket-jig']],
    ['dados, without a jig for top and base', 'dado', ['pocket-jig']],
  ])('%s: it is built as drawn', (_, joints, without) => {
    const plan = planOf(joints, without);
    const stops = plan.snags.filter((s) => s.level === 'stop' && s.code !== 'tools.missing');
    expect(stops.map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.fits).toBe(true);
    if (without.length > 0) expect(plan.setOut.joints.some((j) => j.hold === 'pocket-screws')).toBe(false);
  });

  test('its heads plugged: every hole for a plug is covered', () => {
    const plan = planOf('face-screws', ['pocket-jig'], true);
    expect(plan.dryFit.fits).toBe(true);
    const plugs = plan.setOut.fasteners.filter((f) => f.plug).length;
    expect(plugs).toBeGreaterThan(8);
    const card = (o: (typeof plan.build.operations)[number]) => (o.does.act === 'plug' ? o.does.count : 0);
    expect(plan.build.operations.reduce((sum, o) => sum + card(o), 0)).toBe(plugs);
  });

  test('a plug that is forgotten, or set before its screw, is noticed', () => {
    const plan = planOf('face-screws', ['pocket-jig'], true);
    const { build, setOut, breakdown } = plan;
    const faults = (operations: readonly Operation[]) => {
      const input = dryFitInput(plan.job, setOut, breakdown, build, solids);
      const run = dryFit({ ...input, build: { ...build, operations } });
      let step = run.next();
      while (!step.done) step = run.next();
      return [...new Set(step.value.faults.map((f) => f.code))];
    };
    const isPlug = (o: Operation) => o.does.act === 'plug';
    expect(faults(build.operations.filter((o) => !isPlug(o)))).toEqual(['no-plug']);
    const first = build.operations.findIndex((o) => o.does.act === 'screw');
    const early = [
      ...build.operations.slice(0, first),
      ...build.operations.filter(isPlug),
      ...build.operations.slice(first).filter((o) => !isPlug(o)),
    ];
    expect(faults(early)).toContain('no-screw');
  });
});
