import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { applyEdit, checkJob, type JobDocument } from '../src/job/index.ts';
import { type Plan, planJob, sheetIsCut } from '../src/plan/index.ts';
import { cutThatWay, cuttingWays } from './generate/cutting-ways.ts';
import { generatedJobs } from './generate/design.ts';
import { equipped } from './generate/equipped.ts';

/** `RUNS=200 npx vitest run test/generated-cutting` looks further. */
const RUNS = Math.max(4, Math.floor(Number(process.env.RUNS ?? 60) / 15));
const SEED = process.env.SEED === undefined ? 5 : Number(process.env.SEED);

function checked(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

test('whatever a shop asks of the cutting, its plans hold and their cards give the piece; so does the rest, once a sheet is cut', {
  timeout: 600_000,
}, async () => {
  const solids = await openSolids();
  const planned = (job: JobDocument): Plan => {
    const planning = planJob(job, { solids }, { effort: 300_000 });
    let step = planning.next();
    while (!step.done) step = planning.next();
    return step.value;
  };
  const holds = (plan: Plan) => {
    expect(plan.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    const drawn = !plan.setOut.snags.some((s) => s.level === 'stop') && plan.breakdown.missing.length === 0;
    if (drawn) expect(plan.dryFit).toMatchObject({ faults: [], fits: true });
    return drawn;
  };
  let clean = 0;
  fc.assert(
    fc.property(generatedJobs, cuttingWays, ({ document }, ways) => {
      const plan = planned(checked(cutThatWay(equipped(document), ways)));
      if (!holds(plan)) return;
      clean++;
      const sheet = plan.breakdown.lots.flatMap((l) => l.sheets)[0]!.name;
      const edited = applyEdit(plan.job, sheetIsCut(plan, sheet)!);
      if (!edited.ok) throw new Error(edited.snags.map((s) => s.sentence).join('\n'));
      holds(planned(edited.job));
    }),
    { numRuns: RUNS, seed: SEED },
  );
  console.log(`${clean} of ${RUNS} generated shops and designs cut without a stop`);
});
