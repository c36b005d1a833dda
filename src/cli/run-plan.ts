import { openSolids } from '../adaptors/solids-manifold.ts';
import type { JobDocument } from '../job/index.ts';
import { type Plan, type PlanOptions, planJob } from '../plan/index.ts';

/** Plans a job to the end; `pause` is called whenever planning pauses. */
export async function runPlan(
  job: JobDocument,
  options: PlanOptions = {},
  pause: () => void = () => undefined,
): Promise<Plan> {
  const planning = planJob(job, { solids: await openSolids() }, options);
  let step = planning.next();
  while (!step.done) {
    pause();
    step = planning.next();
  }
  return step.value;
}
