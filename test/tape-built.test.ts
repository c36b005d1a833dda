import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { cutsOfAct } from '../src/build/index.ts';
import { checkJob } from '../src/job/index.ts';
import { toMm } from '../src/measure/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function planOf(change: (job: PlainJob) => void): Plan {
  const job = equipped(smallJob()) as PlainJob;
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const taped = (job: PlainJob) =>
  Object.assign(lotOf(job, 'ash6'), {
    tape: 'iron-on',
    nominal: '0.6 mm',
    width: '22 mm',
    stock: [{ id: 'roll', length: '7500 mm', price: 6 }],
  });

describe('front edges with veneer tape', () => {
  test('are built as drawn, the sizes asked for include the tape, and scissors lose nothing', () => {
    const plan = planOf(taped);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const { ledger, overall, parts } = plan.setOut;
    expect(toMm(ledger.ticks(overall.depth))).toBe(350);
    const tape = parts.filter((p) => p.lot === 'ash6');
    expect(tape.length).toBeGreaterThan(5);
    const lot = plan.breakdown.lots.find((l) => l.lot.id === 'ash6')!;
    expect(ledger.ticks(lot.problem.kerf)).toBe(0);
    const cuts = plan.build.operations.flatMap(({ does, tool }) =>
      cutsOfAct(does).flatMap((cut) => (cut.workpiece === 'L1' ? [{ tool, cut }] : [])),
    );
    expect(cuts.length).toBeGreaterThan(2);
    for (const { tool, cut } of cuts) expect(tool === undefined).toBe(cut.knife === true);
  });

  test('no clamp, no router and no waiting: the iron does it, and a chisel trims', () => {
    const plan = planOf(taped);
    const iron = plan.build.operations.filter((o) => o.kind === 'iron');
    expect(iron.length).toBeGreaterThan(0);
    for (const o of iron) {
      expect(o.clamps).toBeUndefined();
      expect(o.minutes.waiting).toBe(0);
      expect(o.cautions.join(' ')).toContain('burn');
    }
    const trims = plan.build.operations.filter((o) => o.kind === 'trim');
    expect(trims.length).toBeGreaterThan(0);
    for (const o of trims) expect(o.tool).toBeUndefined();
  });

  test('tape without glue of its own says how it gets some', () => {
    const plan = planOf((job) => {
      taped(job);
      lotOf(job, 'ash6').tape = 'glue';
    });
    const [iron] = plan.build.operations.filter((o) => o.kind === 'iron');
    expect(iron!.lines.join(' ')).toContain('let both dry');
  });

  test('mitred round a top or glued to a base it is refused', () => {
    const job = equipped(smallJob()) as PlainJob;
    taped(job);
    recordOf(job, 'top').edging = 'ash6';
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['document.wrong-form']);
  });
});

test('a sheet with a thin face veneer is sanded by hand, and the card says how much may go', () => {
  const plan = planOf((job) => {
    lotOf(job, 'birch18').veneer = '0.4 mm';
  });
  const sand = plan.build.operations.find(
    (o) => o.kind === 'sand' && o.lines.join(' ').includes('face veneer'),
  )!;
  expect(sand.lengths.map((t) => toMm(plan.setOut.ledger.ticks(t)))).toEqual([0.4, 0.1]);
  expect(sand.lines.join(' ')).toContain('by hand with a block');
  expect(plan.dryFit.fits).toBe(true);
});
