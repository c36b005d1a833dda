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
    const first = whole.operations.length - build.operations.length + 1;
    if (given.options.json) writeJson(output, inMm(setOut.ledger, stepsReport(build)));
    else output.out(stepLines(build, setOut.ledger, job.shop, first));
    return hasStop(snags) ? EXIT.snag : EXIT.fine;
  },
};

/** The cards from one on: by its number or its title, as they are printed, or by the id of its operation. */
function cardsFrom(build: BuildPlan, card: string): BuildPlan {
  const { operations } = build;
  const named = operations[Number(card) - 1] ?? operations.find((o) => o.title === card);
  const left = fromOperation(build, named?.id ?? card);
  if (left) return left;
  const names = operations.flatMap((o) => [o.id, o.title]);
  // No name is near to a number.
  const near = Number.isNaN(Number(card)) ? nearestNames(card, names).map((n) => `“${n}”`) : [];
  const nearest = near.length > 0 ? ` Nearest: ${near.join(', ')}.` : '';
  throw new BadInput(`There is no card “${card}” here; they go from 1 to ${operations.length}.${nearest}`);
}
