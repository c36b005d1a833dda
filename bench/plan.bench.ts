import { readFileSync } from 'node:fs';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { bookFiles } from '../src/cli/book-files.ts';
import { readJob } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';

const read = readJob(readFileSync(new URL('../examples/glaze-cabinet.json', import.meta.url), 'utf8'));
if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
const { job } = read;

function planned(solids: Solids): Plan {
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
];
