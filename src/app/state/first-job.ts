import example from '../../../examples/glaze-cabinet.json?raw';
import { checkJob, readJob } from '../../job/index.ts';
import type { Snag } from '../../snag/index.ts';
import { begin, type History } from './history.ts';
import { kept } from './keep.ts';

/** The job that a page opens with. */
export interface FirstJob {
  readonly name: string;
  readonly history: History;
  /** The text it began as. */
  readonly opened: string;
  readonly refused?: { readonly file: string; readonly snags: readonly Snag[] };
}

/**
 * The job the program was started with, going on from where it was left if it is the same file; else the one that was
 * open last; else the example.
 */
export async function firstJob(): Promise<FirstJob> {
  const served = await servedJob();
  const before = await kept(served?.name);
  const goesOn = before && (served === undefined || before.opened === served.text) && isSound(before.history);
  if (goesOn) return before;
  const text = served?.text ?? example;
  const name = served?.name ?? 'glaze-cabinet';
  const read = readJob(text);
  if (read.ok) return { name, history: begin(read.job), opened: text };
  const fallback = readJob(example);
  if (!fallback.ok) throw new Error('the example is not a job');
  return {
    name: 'glaze-cabinet',
    history: begin(fallback.job),
    opened: example,
    refused: { file: `${name}.json`, snags: read.snags },
  };
}

/** A job kept by another version of the program may no longer be one. */
function isSound(history: History): boolean {
  return checkJob(history.job).ok;
}

async function servedJob(): Promise<{ readonly name: string; readonly text: string } | undefined> {
  try {
    const response = await fetch('./job.json');
    if (response.status !== 200 || !response.headers.get('content-type')?.includes('json')) return undefined;
    const name = decodeURIComponent(response.headers.get('job-name') ?? 'job');
    return { name, text: await response.text() };
  } catch {
    return undefined;
  }
}
