import { fitReport } from '../../dry-fit/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';

/** `dry-fit JOB`: executes the printed cards and tells what came of it. */
export const dryFit: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const { dryFit: report } = await runPlan(await jobOf(given));
    if (given.options.json) writeJson(output, fitReport(report));
    else {
      output.out(
        `${report.ran} of ${report.outOf} operations run. ${report.fits ? 'The piece is as drawn.' : 'The piece is not as drawn:'}\n`,
      );
      for (const f of report.faults) output.out(`  ${f.sentence}\n`);
    }
    return report.fits ? EXIT.fine : EXIT.snag;
  },
};
