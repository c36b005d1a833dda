import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { checkJob } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** The small cupboard with long screws, in a shop that is otherwise equipped; tools left out by kind. */
function planOf(joints: string | undefined, without: readonly string[] = []): Plan {
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
});
