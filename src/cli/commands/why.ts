import { formatOf, type JobDocument } from '../../job/index.ts';
import { explain, type Ledger, type LengthFormat, type Traced, tracesOf } from '../../measure/index.ts';
import { planReport } from '../../plan/index.ts';
import { setOut } from '../../setting-out/index.ts';
import { nearestNames } from '../../snag/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { BadInput, EXIT } from '../output.ts';
import { runPlan } from '../run-plan.ts';

/** `why JOB WHAT`: the reasons of a number, by its name or by its place in `plan --json`. */
export const why: Command = {
  options: {},
  takes: [2, 2],
  async run(given, output) {
    const job = await jobOf(given);
    const what = given.arguments[1]!.trim();
    const { name, traced, ledger } = /_mm(\/|$)/.test(what) ? await byPlace(job, what) : byName(job, what);
    output.out(`${name}\n${explain(ledger, traced, finest(formatOf(job.shop))).join('\n')}\n`);
    return EXIT.fine;
  },
};

interface Asked {
  readonly name: string;
  readonly traced: Traced;
  readonly ledger: Ledger;
}

function byName(job: JobDocument, what: string): Asked {
  const { dimensions, ledger } = setOut(job);
  const wanted = what.toLowerCase();
  const found = [...dimensions].find(([name]) => name.toLowerCase() === wanted);
  if (!found) throw notHere(what, [...dimensions.keys()]);
  return { name: found[0], traced: found[1], ledger };
}

async function byPlace(job: JobDocument, what: string): Promise<Asked> {
  const plan = await runPlan(job);
  const traces = tracesOf(planReport(plan));
  const found = traces.find((t) => t.path === what);
  if (!found)
    throw notHere(
      what,
      traces.map((t) => t.path),
    );
  return { name: what, traced: found.traced, ledger: plan.setOut.ledger };
}

function notHere(what: string, names: readonly string[]): BadInput {
  const near = nearestNames(what, names);
  return new BadInput(`There is no “${what}” here. Nearest: ${near.map((n) => `“${n}”`).join(', ')}.`);
}

/** Reasons are read to be added up, so they are told as finely as a rule shows. */
function finest(format: LengthFormat): LengthFormat {
  return format.unit === 'mm' ? { unit: 'mm', step: 0.1 } : { ...format, denominator: 64 };
}
