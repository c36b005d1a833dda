import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Operation } from '../src/build/index.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { checkJob } from '../src/job/index.ts';
import { dryFitInput, type Plan, planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';

interface Plain {
  design: { records: Record<string, unknown>[] };
}

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function planOf(example: string, change: (job: Plain) => void = () => {}): Plan {
  const job = JSON.parse(readFileSync(new URL(`../examples/${example}`, import.meta.url), 'utf8')) as Plain;
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const stops = (plan: Plan) => plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence);

/** The glaze cabinet joined and backed otherwise. */
function cabinet(joints: string, fitting: string, without: readonly string[] = []): Plan {
  return planOf('glaze-cabinet.json', (job) => {
    job.design.records = job.design.records.filter((r) => !without.includes(String(r.id)));
    for (const r of job.design.records) {
      if (r.kind === 'case') r.joints = joints;
      if (r.kind === 'back') r.fitting = fitting;
    }
  });
}

describe('the cabinet, joined in each way', () => {
  test.each([
    ['pocket-screws', 'groove', []],
    ['rabbet', 'rabbet', []],
    ['rabbet', 'applied', ['top']],
    ['dado', 'groove', []],
    ['dado', 'applied', ['top']],
    ['tongue', 'groove', []],
    ['tongue', 'applied', ['top']],
    ['stopped-dado', 'rabbet', ['lipping']],
    ['stopped-dado', 'groove', ['top', 'lipping', 'base']],
  ])('%s, the back by %s, without %j: it is built as drawn', (joints, fitting, without) => {
    const plan = cabinet(joints, fitting, without);
    expect(stops(plan)).toEqual([]);
    expect(plan.dryFit.fits).toBe(true);
  });
});

describe('a mistake on a card about dados', () => {
  let plan: Plan;
  beforeAll(() => {
    plan = planOf('seed-shelf.json');
  });

  function faults(change: (o: Operation) => Operation | undefined): readonly string[] {
    const { build, setOut, breakdown } = plan;
    const operations = build.operations.flatMap((o) => change(o) ?? []);
    const input = dryFitInput(plan.job, setOut, breakdown, build, solids);
    const run = dryFit({ ...input, build: { ...build, operations } });
    let step = run.next();
    while (!step.done) step = run.next();
    return [...new Set(step.value.faults.map((f) => f.code))].sort();
  }

  const groove = (o: Operation) => o.does.act === 'groove' && o.does.edge === 'start';

  test('none is made by the plan itself', () => {
    expect(faults((o) => o)).toEqual([]);
  });

  test('left out, the shelves run into the sides, and the cuts are missed', () => {
    expect(faults((o) => (groove(o) ? undefined : o))).toEqual(['in-the-way', 'part-differs']);
  });

  test('cut into the other face, likewise', () => {
    const turned = faults((o) =>
      o.does.act === 'groove' && groove(o)
        ? { ...o, does: { ...o.does, face: o.does.face === 'show' ? 'under' : 'show' } }
        : o,
    );
    expect(turned).toEqual(['in-the-way', 'part-differs']);
  });

  test('with the second pass forgotten, a narrow bit leaves no room', () => {
    const once = faults((o) =>
      o.does.act === 'groove' && groove(o)
        ? { ...o, does: { ...o.does, channels: o.does.channels.map((c) => c.slice(0, 1)) } }
        : o,
    );
    expect(once).toContain('in-the-way');
  });
});
