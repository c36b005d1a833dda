import { openSolids } from '../../src/adaptors/solids-manifold.ts';
import type { Operation } from '../../src/build/index.ts';
import { type DryFitFault, dryFit } from '../../src/dry-fit/index.ts';
import { dryFitInput } from '../../src/plan/index.ts';
import type { Built } from './built.ts';

/** What the dry fit finds wrong with what was built, or with its cards once each was changed. */
export async function dryFaults(
  { job, drawn, breakdown, build }: Built,
  change: (o: Operation) => Operation = (o) => o,
): Promise<readonly DryFitFault[]> {
  const cards = { ...build, operations: build.operations.map(change) };
  const run = dryFit(dryFitInput(job, drawn, breakdown, cards, await openSolids()));
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value.faults;
}
