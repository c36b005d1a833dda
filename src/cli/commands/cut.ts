import {
  type CutPlan,
  type CutProblem,
  cutPlanJson,
  judgeCuts,
  ONE_SECOND,
  planCuts,
  readCutProblem,
} from '../../breakdown/index.ts';
import type { JobDocument } from '../../job/index.ts';
import type { Plan } from '../../plan/index.ts';
import { breakdownLines } from '../breakdown-lines.ts';
import type { Command, Given } from '../command.ts';
import { faults, jobOf, jsonOf, textOf } from '../job-file.ts';
import { BadInput, EXIT, type Output, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { clockFor, effortOf, secondsOf } from '../search-clock.ts';
import { table } from '../table.ts';
import { cutList } from './cut-list.ts';
import { noteCuts } from './note-cuts.ts';

const WHY = {
  'larger-than-all-stock': 'larger than all stock',
  'stock-used-up': 'no stock left',
  rules: 'grain, faces, flaws or the rules for cuts leave no way',
} as const;

/** `cut JOB`, `cut --list FILE` or `cut --problem FILE`: how stock is cut up. */
export const cut: Command = {
  options: {
    json: { type: 'boolean' },
    list: { type: 'string' },
    problem: { type: 'string' },
    sawn: { type: 'string' },
    ticked: { type: 'boolean' },
    spoiled: { type: 'string' },
    out: { type: 'string' },
    seconds: { type: 'string' },
  },
  takes: [0, 1],
  async run(given, output) {
    const { list, problem, shop } = given.options;
    const asked = [given.arguments[0], list, problem].filter((a) => a !== undefined);
    if (asked.length === 0)
      throw new BadInput('Name a job, or give --list FILE or --problem FILE. See “casewright help”.');
    if (asked.length > 1)
      throw new BadInput('A job, --list and --problem are three things to cut: give one of them.');
    const { sawn, ticked, spoiled, out } = given.options;
    const noting = ticked === true || sawn !== undefined || spoiled !== undefined || out !== undefined;
    if (noting && given.arguments[0] === undefined)
      throw new BadInput('--sawn, --ticked, --spoiled and --out are about a job: name one.');
    if (noting) return noteCuts(given, output);
    if (typeof list === 'string') return cutList(list, given, output);
    if (typeof problem !== 'string') return cutJob(given, output);
    if (shop !== undefined)
      throw new BadInput('--problem FILE says all there is to cut: give it without a shop.');
    return cutProblem(problem, given, output);
  },
};

async function cutProblem(file: string, given: Given, output: Output): Promise<number> {
  const seconds = secondsOf(given.options.seconds);
  const read = readCutProblem(jsonOf(file, await textOf(file)));
  if (!read.ok) throw new BadInput(`${file}:\n${faults(read.snags)}`);
  for (const note of read.notes) output.err(`${note.sentence}\n`);
  const plan = planWithin(read.problem, seconds);
  const verdict = judgeCuts(read.problem, plan);
  if (!verdict.holds)
    throw new Error(`the judge rejects the plan: ${verdict.findings.map((f) => f.says).join('; ')}`);
  if (given.options.json) writeJson(output, cutPlanJson(read.problem, plan));
  else {
    const counts = new Map<string, number>();
    for (const s of plan.sheets) counts.set(s.stock, (counts.get(s.stock) ?? 0) + s.count);
    output.out(
      table(
        ['stock', 'count'],
        [...counts].map(([id, n]) => [id, String(n)]),
      ),
    );
    output.out(
      `Cost ${plan.cost / (read.problem.costScale ?? 1)}${plan.proven ? ', and no plan costs less' : `; no plan costs less than ${plan.bound.cost / (read.problem.costScale ?? 1)}`}.\n`,
    );
    if (plan.endedByClock)
      output.out('The search was ended before its time, and another run may end elsewhere.\n');
    for (const u of plan.unplaced) output.out(`${u.count} × ${u.piece}: ${WHY[u.why]}.\n`);
  }
  return plan.unplaced.length > 0 ? EXIT.snag : EXIT.fine;
}

/** Work for a plan when nobody says how long: counted, so that the same problem always gives the same bytes. */
const WITHOUT_ASKING = ONE_SECOND / 2;

/** Plans by counted work for about as long as asked, and by the clock when this machine is slower than that. */
function planWithin(problem: CutProblem, seconds: number | undefined): CutPlan {
  const clock = clockFor(seconds);
  const effort = seconds === undefined ? WITHOUT_ASKING : effortOf(seconds);
  const planning = planCuts(problem, { effort, stop: clock.stop });
  let step = planning.next();
  while (!step.done) {
    clock.look();
    step = planning.next();
  }
  return step.value;
}

/** Plans a job; with seconds given, about that long is spent on the cutting of its lots together. */
async function planFor(job: JobDocument, seconds: number | undefined): Promise<Plan> {
  if (seconds === undefined) return runPlan(job);
  const { stop, look } = clockFor(seconds);
  return runPlan(job, { effort: effortOf(seconds, job.shop.rack.lots.length), stop }, look);
}

async function cutJob(given: Given, output: Output): Promise<number> {
  const seconds = secondsOf(given.options.seconds);
  const job = await jobOf(given);
  const { breakdown, setOut } = await planFor(job, seconds);
  if (given.options.json)
    writeJson(output, {
      lots: breakdown.lots.map((l) => ({ lot: l.lot.id, plan: cutPlanJson(l.problem.problem, l.plan) })),
    });
  else output.out(breakdownLines(breakdown, setOut.ledger, job.shop));
  for (const m of breakdown.missing) output.err(`There is no stock for ${m.part.mark} (${m.part.name}).\n`);
  return breakdown.missing.length > 0 ? EXIT.snag : EXIT.fine;
}
