/**
 * Schedules the published problems with 30 jobs (PSPLIB j30, Kolisch and Sprecher 1996) with the plan's own search and
 * prints each length beside the published optimum.
 *
 *   npm run bench:scheduling -- [--nodes N]
 *
 * They are read from 13-scheduling.json in the folder in CASEWRIGHT_REFERENCE, or in ../shared/reference beside the checkout.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { lengthOf, networkOf } from '../src/build/schedule/network.ts';
import { shortestSchedule } from '../src/build/schedule/shortest-schedule.ts';
import type { Task } from '../src/build/schedule/task.ts';
import { ROUND_THE_CLOCK } from '../src/build/schedule/working-time.ts';

interface Problem {
  readonly id: string;
  readonly capacities: readonly number[];
  readonly jobs: readonly {
    readonly id: number;
    readonly duration: number;
    readonly needs: readonly number[];
    readonly successors: readonly number[];
  }[];
  readonly optimum: number;
}

const folder =
  process.env.CASEWRIGHT_REFERENCE ?? fileURLToPath(new URL('../../shared/reference', import.meta.url));
const file = `${folder}/13-scheduling.json`;
const at = process.argv.indexOf('--nodes');
const nodes = at < 0 ? 20_000 : Number(process.argv[at + 1]);

if (existsSync(file)) report((JSON.parse(readFileSync(file, 'utf8')) as { rcpsp_j30: Problem[] }).rcpsp_j30);
else console.log(`There is no ${file}. Set CASEWRIGHT_REFERENCE to the folder that holds it.`);

function report(problems: readonly Problem[]): void {
  let [met, proven, over] = [0, 0, 0];
  for (const problem of problems) {
    const started = process.cpuUsage();
    const network = networkFrom(problem);
    const found = shortestSchedule(network, { enough: Math.max(...network.tail), exactTasks: 40, nodes });
    const ms = process.cpuUsage(started).user / 1000;
    const length = lengthOf(found.timetable);
    if (length === problem.optimum) met++;
    if (found.proven) proven++;
    over += length / problem.optimum - 1;
    const sure = found.proven ? ', proven' : '';
    console.log(`${problem.id}: ${length} (published ${problem.optimum})${sure}, ${Math.round(ms)} ms`);
  }
  const mean = ((100 * over) / problems.length).toFixed(2);
  console.log(
    `${met} of ${problems.length} as short as the published optimum, ${proven} proven; ${mean} % longer on average; ${nodes} nodes`,
  );
}

function networkFrom({ capacities, jobs }: Problem) {
  const tasks = jobs.map(
    (job): Task => ({
      id: `${job.id}`,
      work: job.duration,
      wait: 0,
      unbroken: true,
      after: jobs.flatMap((other) => (other.successors.includes(job.id) ? [`${other.id}`] : [])),
      needs: job.needs.flatMap((amount, r) =>
        amount > 0 ? [{ resource: `${r}`, amount, until: 'ready' as const }] : [],
      ),
    }),
  );
  return networkOf(
    tasks,
    capacities.map((there, r) => ({ id: `${r}`, there })),
    ROUND_THE_CLOCK,
  );
}
