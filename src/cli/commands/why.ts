import { formatOf } from '../../job/index.ts';
import { explain } from '../../measure/index.ts';
import { setOut } from '../../setting-out/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { BadInput, EXIT } from '../output.ts';

/** `why JOB WHAT`: the reasons of a number. */
export const why: Command = {
  options: {},
  takes: [2, 2],
  async run(given, output) {
    const job = await jobOf(given);
    const drawn = setOut(job);
    const what = given.arguments[1]!;
    const wanted = what.trim().toLowerCase();
    const found = [...drawn.dimensions].find(([name]) => name.toLowerCase() === wanted);
    if (!found) {
      const near = nearest(wanted, [...drawn.dimensions.keys()]);
      throw new BadInput(`There is no “${what}” here. Nearest: ${near.map((n) => `“${n}”`).join(', ')}.`);
    }
    output.out(`${found[0]}\n${explain(drawn.ledger, found[1], formatOf(job.shop)).join('\n')}\n`);
    return EXIT.fine;
  },
};

/** The three names that share most with what was asked, by pairs of letters. */
function nearest(wanted: string, names: readonly string[]): readonly string[] {
  const pairs = (s: string) =>
    new Set(Array.from({ length: Math.max(0, s.length - 1) }, (_, i) => s.slice(i, i + 2)));
  const asked = pairs(wanted);
  const likeness = (name: string) => {
    const own = pairs(name.toLowerCase());
    let same = 0;
    for (const p of own) if (asked.has(p)) same++;
    return (2 * same) / (own.size + asked.size || 1);
  };
  return [...names].sort((a, b) => likeness(b) - likeness(a) || (a < b ? -1 : 1)).slice(0, 3);
}
