/**
 * Cuts the published benchmark sets and prints totals beside the published ones.
 *
 *   npm run bench:cutting -- --set NAME --seconds S [--sample N] [--seed N] [--each]
 *
 * One thread, one seed, one set of parameters for all. Every plan is judged. The sets are read from the folder in
 * CASEWRIGHT_BENCH, or from ../shared/bench beside the checkout.
 */
import { existsSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { judgeCuts, planCuts } from '../src/breakdown/index.ts';
import { type BenchCase, SETS } from './cutting-sets.ts';
import { sheetsOfGeneralPacker } from './general-packer.ts';

const folder = process.env.CASEWRIGHT_BENCH ?? fileURLToPath(new URL('../../shared/bench', import.meta.url));

function option(name: string, otherwise: string): string {
  const i = process.argv.indexOf(`--${name}`);
  return i < 0 ? otherwise : (process.argv[i + 1] ?? otherwise);
}

const seconds = Number(option('seconds', '1'));
const sample = Number(option('sample', '0'));
const seed = Number(option('seed', '1'));
const each = process.argv.includes('--each');
const name = option('set', '');
const set = SETS[name];
if (!set) {
  console.log(`Which set? --set ${Object.keys(SETS).join(' | ')}   --seconds S   --sample N`);
  process.exit(2);
}
if (!existsSync(folder)) {
  console.log(`No benchmark sets in ${folder}. Set CASEWRIGHT_BENCH to the folder that holds them.`);
  process.exit(0);
}

/** A seeded sample, the same on every machine. */
function drawn(cases: readonly BenchCase[], n: number): readonly BenchCase[] {
  if (n <= 0 || n >= cases.length) return cases;
  const rest = [...cases];
  let state = 20260;
  return Array.from({ length: n }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return rest.splice(state % rest.length, 1)[0]!;
  }).sort((a, b) => cases.indexOf(a) - cases.indexOf(b));
}

/** Processor time of this process in ms: on a shared machine the wall clock would measure the neighbours. */
function used(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

interface Row {
  readonly of: BenchCase;
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly ms: number;
}

function run(c: BenchCase): Row {
  const stop = { requested: false };
  const start = used();
  const steps = planCuts(c.problem, { effort: Number.POSITIVE_INFINITY, seed, stop, tidy: false });
  for (;;) {
    const step = steps.next();
    const ms = used() - start;
    if (ms >= seconds * 1000) stop.requested = true;
    if (!step.done) continue;
    const plan = step.value;
    const verdict = judgeCuts(c.problem, plan);
    if (!verdict.holds) throw new Error(`${c.name}: ${verdict.findings.map((f) => f.says).join(' ')}`);
    if (plan.unplaced.length > 0) throw new Error(`${c.name}: pieces are unplaced`);
    return { of: c, cost: plan.cost, bound: plan.bound.cost, proven: plan.proven, ms };
  }
}

const cases = drawn(set.load(folder), sample);
const rows: Row[] = [];
for (const c of cases) {
  const row = run(c);
  rows.push(row);
  if (each)
    console.log(`${c.name} ${row.cost} bound ${row.bound} known ${c.known ?? '-'} ${Math.round(row.ms)} ms`);
}
const sum = (of: (r: Row) => number) => rows.reduce((a, r) => a + of(r), 0);
const lies = rows.filter(
  (r) =>
    (r.of.known !== undefined && (r.bound > r.of.known || (r.proven && r.cost > r.of.known))) ||
    (r.of.knownBound !== undefined && r.cost < r.of.knownBound),
);
console.log(
  `${set.title}: ${rows.length} of ${set.load(folder).length} instances, ${seconds} s of processor time each, seed ${seed}`,
);
console.log(
  `${new Date().toISOString().slice(0, 10)}, ${cpus().length} cores, one thread, node ${process.version}`,
);
for (const line of set.report(rows)) console.log(line);
for (const line of general()) console.log(line);
console.log(
  `proven ${rows.filter((r) => r.proven).length}; mean ${Math.round(sum((r) => r.ms) / rows.length)} ms`,
);
console.log(
  lies.length === 0 ? 'no published value contradicted' : `CONTRADICTED: ${lies.map((r) => r.of.name)}`,
);

/** A general-purpose packing library on the same instances, at once: one pass of its own. */
function general(): string[] {
  const start = used();
  const theirs = rows.map((r) => sheetsOfGeneralPacker(r.of.problem));
  const both = rows.filter((_, i) => theirs[i] !== undefined);
  if (both.length === 0) return [];
  const total = theirs.reduce<number>((a, t) => a + (t ?? 0), 0);
  const ours = both.reduce((a, r) => a + r.cost, 0);
  return [
    `maxrects-packer, which need not cut right through: ${total} (ours ${ours}), ${Math.round(used() - start)} ms in all`,
  ];
}
