import { readFileSync } from 'node:fs';
import { checkJob, type JobDocument } from '../../src/job/index.ts';

/** The tool chest of the examples as a plain document, for tests to change. A new one each time. */
export interface PlainChest {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: { readonly rack: Record<string, Record<string, unknown>[]> };
}

/** Fields to set, by the id of a record, runner, lot or screw. */
export type Changes = Readonly<Record<string, object>>;

/** The tool chest after fields were set, not yet checked. */
export function changedChest(changes: Changes): PlainChest {
  const job = JSON.parse(
    readFileSync(new URL('../../examples/tool-chest.json', import.meta.url), 'utf8'),
  ) as PlainChest;
  const { runners, lots, screws } = job.shop.rack;
  const all = [...job.design.records, ...runners!, ...lots!, ...screws!];
  for (const [id, fields] of Object.entries(changes)) {
    const found = all.find((x) => x.id === id);
    if (!found) throw new Error(`nothing is called ${id}`);
    Object.assign(found, fields);
  }
  return job;
}

/** The same as a job. */
export function toolChest(changes: Changes = {}): JobDocument {
  const read = checkJob(changedChest(changes));
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}
