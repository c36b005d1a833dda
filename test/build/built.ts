import { readFileSync } from 'node:fs';
import { type Breakdown, breakDown } from '../../src/breakdown/index.ts';
import { type BuildPlan, planBuild } from '../../src/build/index.ts';
import { checkJob, type JobDocument } from '../../src/job/index.ts';
import type { Traced } from '../../src/measure/index.ts';
import { type SetOut, setOut } from '../../src/setting-out/index.ts';

/** A job taken as far as its build. */
export interface Built {
  readonly job: JobDocument;
  readonly drawn: SetOut;
  readonly breakdown: Breakdown;
  readonly build: BuildPlan;
}

/** Sets out, breaks down and builds a document; its cutting is sought with a little work only, unless more is asked for. */
export function built(document: unknown, effort = 300_000): Built {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  const { job } = read;
  const drawn = setOut(job);
  const cutting = breakDown(job, drawn, { effort });
  let step = cutting.next();
  while (!step.done) step = cutting.next();
  return { job, drawn, breakdown: step.value, build: planBuild(job, drawn, step.value) };
}

/** A traced length of what was built, in mm. */
export function mm({ drawn }: Built, t: Traced): number {
  return drawn.ledger.ticks(t) / 3200;
}

/** The glaze cabinet of the examples, as a plain document. */
export function demoDocument(): {
  design: { records: Record<string, unknown>[] };
  shop: Record<string, unknown>;
} {
  return JSON.parse(readFileSync(new URL('../../examples/glaze-cabinet.json', import.meta.url), 'utf8'));
}

/** An example by its name, taken as far as its build. */
export function builtExample(name: string): Built {
  return built(JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8')));
}

/** The glaze cabinet with shelves alone: its fourth bay has one like the third, and nothing closes any. */
export function shelvesAlone(): ReturnType<typeof demoDocument> {
  const demo = demoDocument();
  const records = demo.design.records.filter(
    (r) => !['tools', 'above-tools', 'drawers', 'sliders'].includes(String(r.id)),
  );
  const plain = records.map(({ split, ...r }) =>
    r.id === 'bay4' || split === undefined ? r : { ...r, split },
  );
  const shelf = { ...plain.find((r) => r.id === 'buckets3')!, id: 'buckets4', parent: 'bay4' };
  return { ...demo, design: { records: [...plain, shelf] } };
}

/** The glaze cabinet's shop with other records: a piece of its own. */
export function pieceOf(...records: readonly Record<string, unknown>[]): unknown {
  return { ...demoDocument(), design: { records } };
}
