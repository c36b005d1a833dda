import { readFileSync } from 'node:fs';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { bookFiles } from '../src/cli/book-files.ts';
import { type JobDocument, readJob } from '../src/job/index.ts';
import { type Plan, planJob, toleranceOf } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';

function jobOf(example: string): JobDocument {
  const read = readJob(readFileSync(new URL(`../examples/${example}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

const [demo, kitchen] = [jobOf('glaze-cabinet'), jobOf('hall-kitchen')];

function planned(solids: Solids, job = demo): Plan {
  const planning = planJob(job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

export default [
  {
    name: 'plan: the glaze cabinet, book included',
    limitMs: 2000,
    prepare: async () => {
      const solids = await openSolids();
      return () => bookFiles(planned(solids));
    },
  },
  {
    name: 'plan: the glaze cabinet without its book',
    prepare: async () => {
      const solids = await openSolids();
      return () => planned(solids);
    },
  },
  {
    name: 'plan: the hall kitchen, 250 parts, dry fit included',
    limitMs: 20_000,
    prepare: async () => {
      const solids = await openSolids();
      return () => planned(solids, kitchen);
    },
  },
  {
    name: 'virtual builds: the glaze cabinet 10,000 times',
    limitMs: 2000,
    prepare: async () => {
      const plan = planned(await openSolids());
      return () => toleranceOf(plan);
    },
  },
];
