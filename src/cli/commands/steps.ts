import { stepsReport } from '../../build/index.ts';
import { inMm } from '../../measure/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { hasStop } from '../snag-lines.ts';
import { stepLines } from '../step-lines.ts';

/** `steps JOB`: the step cards in order. */
export const steps: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const job = await jobOf(given);
    const { build, setOut, snags } = await runPlan(job);
    if (given.options.json) writeJson(output, inMm(setOut.ledger, stepsReport(build)));
    else output.out(stepLines(build, setOut.ledger, job.shop));
    return hasStop(snags) ? EXIT.snag : EXIT.fine;
  },
};
