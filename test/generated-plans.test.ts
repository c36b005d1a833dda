import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { checkJob, type JobDocument, readPlace } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { generatedJobs } from './generate/design.ts';
import { equipped } from './generate/equipped.ts';

/** `RUNS=500 npx vitest run test/generated-plans` looks further. */
const RUNS = Number(process.env.RUNS ?? 25);
const SEED = process.env.SEED === undefined ? 7 : Number(process.env.SEED);

/** The share of all designs that must come out clean. */
const CLEAN = 0.8;

function checked(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

test('a generated design is planned to the end: it dry-fits clean, or what stops it names its place', {
  timeout: 3_600_000,
}, async () => {
  const solids = await openSolids();
  const planned = (job: JobDocument): Plan => {
    const planning = planJob(job, { solids }, { effort: 300_000 });
    let step = planning.next();
    while (!step.done) step = planning.next();
    return step.value;
  };
  let clean = 0;
  let drawn = 0;
  const stops = new Map<string, number>();
  fc.assert(
    fc.property(generatedJobs, ({ document }) => {
      const job = checked(equipped(document));
      const plan = planned(job);
      const stopping = plan.snags.filter((s) => s.level === 'stop');
      for (const code of new Set(stopping.map((s) => s.code))) stops.set(code, (stops.get(code) ?? 0) + 1);
      const isDrawn =
        !plan.setOut.snags.some((x) => x.level === 'stop') && plan.breakdown.missing.length === 0;
      if (isDrawn) {
        drawn++;
        if (plan.dryFit.fits) clean++;
        // What the dry fit finds wrong is named where a maker looks for it.
        else expect(stopping.some((s) => s.code.startsWith('dry-fit.'))).toBe(true);
        expect(plan.dryFit.fits).toBe(plan.dryFit.faults.length === 0);
        if (plan.dryFit.fits) expect(plan.dryFit.unused).toEqual([]);
        expect(plan.breakdown.lots.every((l) => l.verdict.holds)).toBe(true);
      } else expect(stopping.length).toBeGreaterThan(0);
      for (const { where, sentence } of stopping) {
        const { path, part, record, operation, lot } = where;
        expect([path, part, record, operation, lot].some(Boolean), sentence).toBe(true);
        if (path !== undefined)
          expect(readPlace(job, path.split('/').slice(0, 3).join('/')), path).toBeDefined();
      }
    }),
    { numRuns: RUNS, seed: SEED },
  );
  const list = [...stops].map(([code, n]) => `${code} ${n}`).join(', ');
  console.log(
    `${clean} of ${RUNS} generated plans dry-fit clean, of ${drawn} that set out without a stop; stops: ${list || 'none'}`,
  );
  // Those that say what stops them in the drawing are counted as well.
  expect(clean).toBeGreaterThanOrEqual(CLEAN * RUNS);
});
