import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { inMm } from '../../measure/index.ts';
import { planReport } from '../../plan/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { BadInput, EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { hasStop } from '../snag-lines.ts';
import { summary } from '../summary.ts';

/** `plan JOB`: plans it, writes the book and the lists, and sums up. */
export const plan: Command = {
  options: { json: { type: 'boolean' }, out: { type: 'string' } },
  takes: [1, 1],
  async run(given, output) {
    const made = await runPlan(await jobOf(given));
    const report = inMm(made.setOut.ledger, planReport(made));
    const { out } = given.options;
    if (typeof out === 'string') {
      const { bookFiles } = await import('../book-files.ts');
      await write(out, [...(await bookFiles(made)), ['plan.json', `${JSON.stringify(report, null, 2)}\n`]]);
    }
    if (given.options.json) writeJson(output, report);
    else {
      output.out(summary(made));
      if (typeof out === 'string')
        output.out(`\nWritten: ${join(out, 'book.pdf')}, cutting-list.csv, plan.json\n`);
    }
    return hasStop(made.snags) ? EXIT.snag : EXIT.fine;
  },
};

/** Writes files to a folder, which is made if it isn't there. */
async function write(
  folder: string,
  files: readonly (readonly [name: string, bytes: Uint8Array | string])[],
): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    for (const [name, bytes] of files) await writeFile(join(folder, name), bytes);
  } catch (e) {
    throw new BadInput(`“${folder}” can’t be written to: ${e instanceof Error ? e.message : e}`);
  }
}
