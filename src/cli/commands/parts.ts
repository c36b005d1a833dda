import { formatOf } from '../../job/index.ts';
import { inMm, printSetting } from '../../measure/index.ts';
import { commonName, groupParts, partsAndBoards, partsReport, setOut } from '../../setting-out/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { hasStop, snagLines } from '../snag-lines.ts';
import { table } from '../table.ts';

/** `parts JOB`: every part with its finished sizes. */
export const parts: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const job = await jobOf(given);
    const drawn = setOut(job);
    const stops = drawn.snags.filter((s) => s.level === 'stop');
    if (given.options.json) writeJson(output, inMm(drawn.ledger, partsReport(drawn)));
    else {
      const format = formatOf(job.shop);
      const size = (t: Parameters<typeof drawn.ledger.ticks>[0]) =>
        printSetting(drawn.ledger.ticks(t), format);
      output.out(
        table(
          ['mark', 'part', 'count', 'length', 'width', 'thickness', 'from'],
          groupParts({ ...drawn, parts: partsAndBoards(drawn) }).map(({ parts: group, marks }) => {
            const [first] = group;
            return [
              marks,
              group.length === 1 ? first!.name : commonName(group),
              String(group.length),
              size(first!.length),
              size(first!.width),
              size(first!.thickness),
              first!.lot,
            ];
          }),
        ),
      );
    }
    if (stops.length) output.err(`${snagLines(stops)}\n`);
    return hasStop(stops) ? EXIT.snag : EXIT.fine;
  },
};
