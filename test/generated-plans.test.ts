import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { checkJob, type JobDocument, readPlace } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { generatedJobs } from './generate/design.ts';

/** `RUNS=500 npx vitest run test/generated-plans` looks further. */
const RUNS = Number(process.env.RUNS ?? 25);
const SEED = process.env.SEED === undefined ? 7 : Number(process.env.SEED);

/** A shop that can do the work: what a generated one has, and saw, rail, jig, clamps and the rest besides. */
function equipped(document: { readonly shop: unknown }): unknown {
  const shop = document.shop as { units: string; tools: readonly { kind: string }[]; rack: object };
  const step = shop.units === 'in' ? '1/32 in' : '0.5 mm';
  const tool = (kind: string, more: object) => ({ id: `our-${kind}`, kind, accuracy: '0.5 mm', ...more });
  const tools = [
    tool('circular-saw', { kerf: '2.2 mm', step, reach: '60 mm', reach45: '45 mm' }),
    tool('guide-rail', { length: '3000 mm', width: '200 mm' }),
    tool('drill', { step }),
    tool('pocket-jig', { step: '1 mm' }),
    tool('router', { step: '0.1 mm', edgeGuide: true }),
    tool('sander', {}),
    tool('clamp', { count: 8, reach: '3000 mm' }),
    tool('marking', { step }),
  ].filter(({ kind }) => !shop.tools.some((t) => t.kind === kind));
  const bits = [
    ...[1.7, 2, 3.5].map((d) => ({ id: `twist-${d}`, kind: 'twist', diameter: `${d} mm` })),
    { id: 'sink', kind: 'countersink', diameter: '12 mm' },
    { id: 'pocket-bit', kind: 'pocket', diameter: '9.5 mm' },
    { id: 'straight', kind: 'straight', diameter: '12 mm' },
    { id: 'flush', kind: 'flush-trim', diameter: '12 mm' },
  ];
  return { ...document, shop: { ...shop, tools: [...shop.tools, ...tools], rack: { ...shop.rack, bits } } };
}

function checked(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

test('a generated design is planned to the end: it dry-fits clean, or what stops it names its place', {
  timeout: 600_000,
}, async () => {
  const solids = await openSolids();
  const planned = (job: JobDocument): Plan => {
    const planning = planJob(job, { solids }, { effort: 300_000 });
    let step = planning.next();
    while (!step.done) step = planning.next();
    return step.value;
  };
  let clean = 0;
  const stops = new Map<string, number>();
  fc.assert(
    fc.property(generatedJobs, ({ document }) => {
      const job = checked(equipped(document));
      const plan = planned(job);
      const stopping = plan.snags.filter((s) => s.level === 'stop');
      for (const code of new Set(stopping.map((s) => s.code))) stops.set(code, (stops.get(code) ?? 0) + 1);
      const drawn = !plan.setOut.snags.some((x) => x.level === 'stop') && plan.breakdown.missing.length === 0;
      if (drawn) {
        clean++;
        expect(plan.dryFit.faults).toEqual([]);
        expect(plan.dryFit).toMatchObject({ fits: true, unused: [] });
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
  console.log(`${clean} of ${RUNS} generated plans dry-fit clean; stops: ${list || 'none'}`);
  expect(clean).toBeGreaterThanOrEqual(RUNS / 2);
});
