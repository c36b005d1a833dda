import { stepsReport } from '../../build/index.ts';
import { formatOf } from '../../job/index.ts';
import { inMm, printSetting } from '../../measure/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { hasStop } from '../snag-lines.ts';

/** `steps JOB`: the step cards in order. */
export const steps: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const job = await jobOf(given);
    const { build, setOut, snags } = await runPlan(job);
    if (given.options.json) writeJson(output, inMm(setOut.ledger, stepsReport(build)));
    else {
      const format = formatOf(job.shop);
      const byId = new Map(build.operations.map((o) => [o.id, o]));
      let n = 0;
      for (const stage of build.stages) {
        output.out(`\n${stage.title}\n${'-'.repeat(stage.title.length)}\n`);
        for (const id of stage.operations) {
          const o = byId.get(id)!;
          const tool = job.shop.tools.find((t) => t.id === o.tool);
          const lines = o.lines.map((l) =>
            l.replace(/\{(\d+)\}/g, (_, i) =>
              printSetting(setOut.ledger.ticks(o.lengths[Number(i)]!), format),
            ),
          );
          output.out(`\n${++n}. ${o.title}${tool ? `  [${tool.name ?? tool.kind}]` : ''}\n`);
          if (o.faceUp) output.out(`   Lying: ${o.faceUp}.\n`);
          if (o.reference) output.out(`   Measure from: ${o.reference}.\n`);
          for (const l of lines) output.out(`   - ${l}\n`);
          for (const c of o.cautions) output.out(`   ! ${c}\n`);
        }
      }
    }
    return hasStop(snags) ? EXIT.snag : EXIT.fine;
  },
};
