import { openSolids } from '../../src/adaptors/solids-manifold.ts';
import { checkJob } from '../../src/job/index.ts';
import { type Plan, planJob } from '../../src/plan/index.ts';

const solids = await openSolids();

/** A document planned to the end. */
export function planned(document: unknown): Plan {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids }, { effort: 100_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}
