import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Act, Operation } from '../src/build/index.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { checkJob } from '../src/job/index.ts';
import { fromMm, type Traced } from '../src/measure/index.ts';
import { dryFitInput, type Plan, planJob } from '../src/plan/index.ts';
import { opposite } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** The small cupboard, its panels joined by dowels or biscuits. */
function planOf(joints: string | undefined, change: (job: PlainJob) => void = () => {}): Plan {
  const job = equipped(smallJob()) as PlainJob;
  if (joints !== undefined) recordOf(job, 'case').joints = joints;
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const withLid = (more: object) => (job: PlainJob) => {
  job.design.records = job.design.records.filter((r) => r.id !== 'top');
  Object.assign(recordOf(job, 'case'), more);
};
const without =
  (...kinds: readonly string[]) =>
  (job: PlainJob) => {
    job.shop.tools = job.shop.tools.filter((t) => !kinds.includes(String(t.kind)));
  };

function faultsOf(plan: Plan, operations: readonly Operation[]): readonly string[] {
  const { build, setOut, breakdown } = plan;
  const run = dryFit({
    ...dryFitInput(plan.job, setOut, breakdown, build, solids),
    build: { ...build, operations },
  });
  let step = run.next();
  while (!step.done) step = run.next();
  return [...new Set(step.value.faults.map((f) => f.code))];
}

const acts = (plan: Plan, change: (act: Act) => Act) =>
  plan.build.operations.map((o) => ({ ...o, does: change(o.does) }));

describe('a cupboard with dowels or biscuits', () => {
  test.each([
    ['dowels', {}],
    ['biscuits', {}],
    ['dowels', { lid: 'over' }],
    ['biscuits', { bottom: 'under', lid: 'between' }],
    ['dowels', { bottom: 'under', lid: 'over' }],
  ])('%s, %j: it is built as drawn, and every card pushes on one way', (joints, corners) => {
    const plan = planOf(joints, Object.keys(corners).length > 0 ? withLid(corners) : undefined);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
    const put = plan.build.operations.flatMap(({ does }) => (does.act === 'set' ? (does.pegs ?? []) : []));
    expect(put.reduce((sum, p) => sum + p.count, 0)).toBe(plan.setOut.pegs.length);
    expect(plan.setOut.pegs.length).toBeGreaterThan(12);
  });

  test.each([
    [['pocket-jig', 'router'], 'dowels'],
    [['pocket-jig', 'router', 'dowel-jig'], 'biscuits'],
  ])('in a shop without %j they are what the tools allow', (lacking, joints) => {
    const plan = planOf(undefined, (job) => {
      without(...lacking)(job);
      recordOf(job, 'back').fitting = 'applied';
      job.shop.rack.screws.push({
        id: 'face-60',
        kind: 'countersunk',
        length: '60 mm',
        diameter: '4 mm',
        head: '8 mm',
      });
    });
    expect(plan.setOut.joinery[0]).toMatchObject({
      joints,
      because: expect.stringContaining('the shop has'),
    });
    expect(plan.dryFit.fits).toBe(true);
  });

  test('what is forgotten, too long, out of line or pushed on last is noticed', () => {
    const plan = planOf('dowels');
    expect(
      faultsOf(
        plan,
        acts(plan, (a) => (a.act === 'set' ? { ...a, pegs: [] } : a)),
      ),
    ).toContain('no-peg');
    const { ledger } = plan.setOut;
    const mm = ledger.row({ id: 'mistake', value: fromMm(1), says: 'a mistake', source: 'the test' });
    let bored = false;
    const further = acts(plan, (a) => {
      if (bored || a.act !== 'drill' || !a.dowels) return a;
      bored = true;
      const [first, ...others] = a.at as readonly (readonly [Traced, Traced])[];
      return { ...a, at: [[ledger.sum('moved', first![0], mm), first![1]] as const, ...others] };
    });
    expect(faultsOf(plan, further)).toEqual(['peg-binds']);
    const deeper = acts(plan, (a) =>
      a.act === 'drill' && a.dowels ? { ...a, depth: ledger.less('shallower', a.depth!, mm, mm) } : a,
    );
    expect(faultsOf(plan, deeper)).toContain('peg-binds');
    const sets = plan.build.operations.filter((o) => o.does.act === 'set' && o.does.pegs);
    const last = sets.at(-1)!;
    const early = plan.build.operations.filter((o) => o !== last);
    early.splice(early.indexOf(sets[1]!), 0, last);
    expect(faultsOf(plan, early)).not.toEqual([]);
  });

  test('a part that comes in between two others which stand already can’t be pushed on', () => {
    const plan = planOf('dowels');
    const { setOut } = plan;
    const shelf = setOut.parts.find((p) => p.id === 'shelves/shelf:1')!;
    const ways = setOut.pegs
      .filter((p) => p.parts[0] === shelf.id)
      .map((p) => p.direction)
      .sort();
    expect(new Set(ways).size).toBe(2);
    expect(opposite(ways[0]!)).toBe(ways.at(-1));
  });
});
