import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { checkJob } from '../src/job/index.ts';
import { planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';

const CASES = new URL('./cases/plans/', import.meta.url);

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** Designs whose plans once came out of the dry fit with a fault; each is named after what was wrong. */
test.each(readdirSync(CASES).sort())('%s dry-fits clean', (name) => {
  const read = checkJob(JSON.parse(readFileSync(new URL(name, CASES), 'utf8')));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids }, { effort: 100_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  const { setOut, breakdown, dryFit } = step.value;
  expect(setOut.snags.filter((s) => s.level === 'stop')).toEqual([]);
  expect(breakdown.missing).toEqual([]);
  expect(dryFit).toMatchObject({ fits: true, faults: [] });
});
