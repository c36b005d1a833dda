import { formatOf, type JobDocument } from '../../job/index.ts';
import { explain, type Ledger, type LengthFormat, type Traced, tracesOf } from '../../measure/index.ts';
import { planReport } from '../../plan/index.ts';
import { setOut } from '../../setting-out/index.ts';
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
  const near = nearest(what.toLowerCase(), names);
  return new BadInput(`There is no “${what}” here. Nearest: ${near.map((n) => `“${n}”`).join(', ')}.`);
}

/** Reasons are read to be added up, so they are told as finely as a rule shows. */
function finest(format: LengthFormat): LengthFormat {
  return format.unit === 'mm' ? { unit: 'mm', step: 0.1 } : { ...format, denominator: 64 };
}

/** The three names that share most with what was asked, by pairs of letters. */
function nearest(wanted: string, names: readonly string[]): readonly string[] {
  const pairs = (s: string) =>
    new Set(Array.from({ length: Math.max(0, s.length - 1) }, (_, i) => s.slice(i, i + 2)));
  const asked = pairs(wanted);
  const likeness = new Map(
    names.map((name) => {
      const own = pairs(name.toLowerCase());
      let same = 0;
      for (const p of own) if (asked.has(p)) same++;
      return [name, (2 * same) / (own.size + asked.size || 1)];
    }),
  );
  return [...likeness]
    .sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
    .slice(0, 3)
    .map(([name]) => name);
}
