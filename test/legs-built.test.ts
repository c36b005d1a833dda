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

function jobWith(legs: object, change: (job: PlainJob) => void = () => {}) {
  const job = equipped(smallJob()) as PlainJob;
  const base = recordOf(job, 'base');
  for (const field of Object.keys(base)) if (!['id', 'kind', 'parent'].includes(field)) delete base[field];
  Object.assign(
    base,
    { form: 'legs', board: 'birch18', strip: 'leg', height: '150 mm', setback: '10 mm' },
    legs,
  );
  job.shop.rack.lots.push({
    id: 'leg',
    name: 'Ash 45 mm',
    material: 'ash-white',
    form: 'strip',
    nominal: '45 mm',
    width: '45 mm',
    stock: [{ id: 'leg-length', length: '2400 mm', price: 20 }],
  });
  change(job);
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

describe('a case on legs with aprons', () => {
  test.each([
    ['as they come', {}],
    ['with higher aprons, set back behind', { apron: '120 mm', setbackBack: '40 mm' }],
  ])('%s: it is built as drawn', (_, legs) => {
    const plan = planOf(legs);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
    // Legs 45 mm thick don’t split where aprons are screwed to them, set back a little behind their faces.
    expect(plan.snags.filter((s) => s.code === 'screws.off-centre')).toEqual([]);
  });

  test('without a jig it is said what the pockets of the aprons need', () => {
    const job = jobWith({}, (j) => {
      j.shop.tools = j.shop.tools.filter((t) => t.kind !== 'pocket-jig');
      j.shop.rack.screws.push({
        id: 'face-60',
        kind: 'countersunk',
        length: '60 mm',
        diameter: '4 mm',
        head: '8 mm',
      });
    });
    const planning = planJob(job, { solids });
    let step = planning.next();
    while (!step.done) step = planning.next();
    expect(step.value.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toContain('tools.missing');
  });

  test('legs are as high as the base, aprons level with their upper ends and 3 mm behind their faces (common practice)', () => {
    const piece = setOut(jobWith({}));
    const mm = (t: Parameters<typeof piece.ledger.ticks>[0]) => toMm(piece.ledger.ticks(t));
    const of = (id: string) => piece.parts.find((p) => p.id === id)!;
    expect(mm(of('base/leg-front-left').length)).toBe(150);
    const apron = of('base/apron-front');
    expect(mm(apron.width)).toBe(100);
    expect(mm(apron.place.origin[2]) + mm(apron.width)).toBe(150);
    // Between legs 45 mm wide, the case 950 mm under its top's overhang, 10 mm set back.
    expect(mm(apron.length)).toBe(950 - 20 - 90);
    expect(piece.joints.filter((j) => j.duty === 'frame' && j.kind === 'butt')).toHaveLength(8);
    for (const j of piece.joints.filter((x) => x.duty === 'frame' && x.kind === 'butt'))
      expect(j.fasteners.length).toBeGreaterThan(0);
    expect(mm(piece.overall.height)).toBe(800);
  });

  test.each([
    ['legs thinner than an apron and its inset', { strip: 'ash18' }, 'strip'],
    ['aprons too low for the screws of two sides', { apron: '80 mm' }, 'apron'],
    ['aprons higher than the legs', { apron: '200 mm' }, 'apron'],
    ['legs set back until they meet', { setback: '440 mm' }, 'setback'],
  ])('%s are refused', (_, legs, field) => {
    const piece = setOut(jobWith(legs));
    expect(piece.snags.map((s) => `${s.code} ${s.where.path}`)).toContain(
      `base.no-room design/records/base/${field}`,
    );
  });
});
