import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Solids } from '../src/solid/index.ts';
import { type Built, built, builtExample, demoDocument } from './build/built.ts';
import { generatedJobs } from './generate/design.ts';
import { equipped } from './generate/equipped.ts';
import { smallJob } from './generate/small-job.ts';
import { inTheWood, judgeMutants, rateOf, sampled } from './mutants/judge-mutants.ts';

/** `EVERY=1 npx vitest run test/dry-fit-mutants` makes every mistake there is in every example; `PLANS=100` so many generated plans. */
const EVERY = Number(process.env.EVERY ?? 0);
const PLANS = Number(process.env.PLANS ?? 2);
const SEED = Number(process.env.SEED ?? 4);
/**
 * Where two places lie nearly alike, the wrong one comes as near as rounding does; nowhere else may a mistake: rows counted from the
 * wrong edge, a strip as wide as it is cut long, halves of nearly one size, a neighbour as thin as tape.
 */
const nearlyAlike = (name: string) =>
  /^([a-z ]+ from the wrong (edge|end)|saw across instead of along|write the wrong half|the wrong side of a neighbour): /.test(
    name,
  );
const LONG = { timeout: 36_000_000 };

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** Some of each kind of mistake, or every so many of all. */
function judged(of: Built, each: number) {
  return judgeMutants(of, solids, (all) =>
    EVERY ? all.filter((_, i) => i % EVERY === 0) : sampled(all, each),
  );
}

test.each([
  ['the glaze cabinet', demoDocument(), 2],
  ['a small cupboard', equipped(smallJob()), 4],
])(
  '%s is clean, and every mistake made in its plan is caught with a sentence, or changes nothing',
  LONG,
  (name, document, each) => {
    const of = judged(built(document), each)!;
    console.log(rateOf(name, of));
    expect(of.slipped).toEqual([]);
    // What changes nothing is two cards that don't need one another, done the other way round, and the like.
    expect(of.unchanged.length).toBeLessThan((of.caught.length + of.unchanged.length) / 4);
    expect(of.caught.length).toBeGreaterThan(80);
  },
);

const EXAMPLES = new URL('../examples/', import.meta.url);

const inSoak = EVERY > 0 ? readdirSync(EXAMPLES).filter((f) => f.endsWith('.json')) : [];

test.each(inSoak)('mistakes in the plan of %s are caught, or change nothing', LONG, (file) => {
  const document: unknown = JSON.parse(readFileSync(new URL(file, EXAMPLES), 'utf8'));
  // Rough boards with flaws take more than a little work.
  const of = judged(built(document, 3_000_000), 1)!;
  console.log(rateOf(file, of), of.near);
  expect(of.slipped).toEqual([]);
  expect(of.near.filter((name) => !nearlyAlike(name))).toEqual([]);
});

test('mistakes in generated plans are caught, or change nothing', LONG, () => {
  const none = (): string[] => [];
  const total = { outOf: 0, caught: none(), unchanged: none(), near: none(), slipped: none() };
  let plans = 0;
  for (const { document } of fc.sample(generatedJobs, { seed: SEED, numRuns: 4 * PLANS })) {
    if (plans === PLANS) break;
    const plan = built(equipped(document));
    if (plan.drawn.snags.some((s) => s.level === 'stop') || plan.breakdown.missing.length > 0) continue;
    const of = judged(plan, 1);
    if (!of) continue;
    plans++;
    total.outOf += of.outOf;
    for (const key of ['caught', 'unchanged', 'near', 'slipped'] as const) total[key].push(...of[key]);
  }
  console.log(rateOf(`${plans} generated plans`, total), total.near);
  expect(plans).toBe(PLANS);
  expect(total.slipped).toEqual([]);
  expect(total.near.filter((name) => !nearlyAlike(name))).toEqual([]);
});

test('a flap’s plain holes for its pull are the same from either face; pilot holes and those that guide screws are not', () => {
  const of = judgeMutants(builtExample('writing-cabinet'), solids, (all) =>
    all.filter((m) => m.operator === 'holes in the other side'),
  )!;
  expect(of.unchanged).toEqual(['holes in the other side: Screw holes through K1 (door of desk)']);
  expect(of.caught.length).toBeGreaterThan(3);
  expect(of.caught.join()).toContain('Pilot holes');
  expect(of.caught.join()).toContain('Screw holes through');
  expect([...of.near, ...of.slipped]).toEqual([]);
});

test('how far a tool runs out of the wood makes no other piece', () => {
  // A dado that stops 1 mm before the front edge, and the same from the other edge, as halves that were taken for one another have it.
  const size = [1601, 628, 17];
  expect(inTheWood({ min: [241, 1, -5], max: [247, 633, 5.6] }, size)).toEqual({
    min: [241, 1, 0],
    max: [247, 628, 5.6],
  });
  expect(inTheWood({ min: [241, -5, -5], max: [247, 627, 5.6] }, size)).toEqual({
    min: [241, 0, 0],
    max: [247, 627, 5.6],
  });
});
