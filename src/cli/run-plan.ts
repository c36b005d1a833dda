import { openSolids } from '../adaptors/solids-manifold.ts';
import type { JobDocument } from '../job/index.ts';
import { type Plan, planJob } from '../plan/index.ts';

/** Plans a job to the end. */
export async function runPlan(job: JobDocument): Promise<Plan> {
  const planning = planJob(job, { solids: await openSolids() });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}
