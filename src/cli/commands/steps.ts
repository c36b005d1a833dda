import { type BuildPlan, fromOperation, stepsReport } from '../../build/index.ts';
import { inMm } from '../../measure/index.ts';
import { nearestNames } from '../../snag/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { BadInput, EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { hasStop } from '../snag-lines.ts';
import { stepLines } from '../step-lines.ts';

/** `steps JOB`: the step cards in order, all of them or from one on. */
export const steps: Command = {
  options: { json: { type: 'boolean' }, from: { type: 'string' } },
  takes: [1, 1],
  async run(given, output) {
    const job = await jobOf(given);
    const { build: whole, setOut, snags } = await runPlan(job);
    const build = typeof given.options.from === 'string' ? cardsFrom(whole, given.options.from) : whole;
    if (given.options.json) writeJson(output, inMm(setOut.ledger, stepsReport(build)));
    else output.out(stepLines(build, setOut.ledger, job.shop));
    return hasStop(snags) ? EXIT.snag : EXIT.fine;
  },
};

function cardsFrom(build: BuildPlan, operation: string): BuildPlan {
  const left = fromOperation(build, operation);
  if (left) return left;
  const near = nearestNames(
    operation,
    build.operations.map((o) => o.id),
  );
  throw new BadInput(
    `There is no operation “${operation}” here. Nearest: ${near.map((n) => `“${n}”`).join(', ')}.`,
  );
}
