import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { hasStop, snagLines } from '../snag-lines.ts';

/** `check JOB`: everything that is to be put right or looked at, worst first. */
export const check: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const plan = await runPlan(await jobOf(given));
    if (given.options.json) writeJson(output, { snags: plan.snags });
    else output.out(plan.snags.length === 0 ? 'Nothing to put right.\n' : `${snagLines(plan.snags)}\n`);
    return hasStop(plan.snags) ? EXIT.snag : EXIT.fine;
  },
};
