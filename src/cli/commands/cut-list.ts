import { readList } from '../../breakdown/index.ts';
import { checkShop, formatOf, type Shop } from '../../job/index.ts';
import { inMm, printSetting } from '../../measure/index.ts';
import { type ListPlan, listReport, planList } from '../../plan/index.ts';
import { groupParts } from '../../setting-out/index.ts';
import { breakdownLines } from '../breakdown-lines.ts';
import type { Given } from '../command.ts';
import { faults, jsonOf, shopOf, textOf } from '../job-file.ts';
import { BadInput, EXIT, type Output, writeJson } from '../output.ts';
import { clockFor, effortOf, secondsOf } from '../search-clock.ts';
import { hasStop, snagLines } from '../snag-lines.ts';
import { stepLines } from '../step-lines.ts';
import { table } from '../table.ts';

/** `cut --list FILE --shop FILE`: cuts a maker's own list from the shop's rack. */
export async function cutList(file: string, given: Given, output: Output): Promise<number> {
  const seconds = secondsOf(given.options.seconds);
  if (typeof given.options.shop !== 'string')
    throw new BadInput('--list needs a rack to cut from: give --shop FILE, a shop or a job that has one.');
  const shop = await shopFrom(given.options.shop);
  const read = readList(await textOf(file), shop);
  if (!read.ok) throw new BadInput(`${file}:\n${faults(read.snags)}`);
  for (const note of read.notes) output.err(`${note.sentence}\n`);
  const { stop, look } = clockFor(seconds);
  const lots = new Set(read.rows.map((r) => r.lot.id)).size;
  const planning = planList(
    shop,
    read.rows,
    seconds === undefined ? {} : { effort: effortOf(seconds, lots), stop },
  );
  let step = planning.next();
  while (!step.done) {
    look();
    step = planning.next();
  }
  const plan = step.value;
  if (given.options.json) writeJson(output, inMm(plan.setOut.ledger, listReport(plan)));
  else output.out(listLines(plan));
  const wrong = plan.snags.filter((s) => s.level !== 'note');
  if (wrong.length > 0) output.err(`${snagLines(wrong)}\n`);
  return plan.breakdown.missing.length > 0 || hasStop(plan.snags) ? EXIT.snag : EXIT.fine;
}

async function shopFrom(file: string): Promise<Shop> {
  const checked = checkShop(shopOf(jsonOf(file, await textOf(file))));
  if (!checked.ok) throw new BadInput(`${file}:\n${faults(checked.snags)}`);
  return checked.shop;
}

function listLines(plan: ListPlan): string {
  const { setOut, job, breakdown, build } = plan;
  const format = formatOf(job.shop);
  const { ledger } = setOut;
  const pieces = groupParts(setOut).map(({ parts, marks }) => {
    const first = parts[0]!;
    return [
      marks,
      first.name,
      String(parts.length),
      printSetting(ledger.ticks(first.length), format),
      printSetting(ledger.ticks(first.width), format),
      first.lot,
      first.grain === 'free' ? 'either way' : 'along the length',
    ];
  });
  return [
    table(['marks', 'piece', 'count', 'length', 'width', 'from', 'grain'], pieces),
    '\n',
    breakdownLines(breakdown, ledger, job.shop),
    stepLines(build, ledger, job.shop),
  ].join('');
}
