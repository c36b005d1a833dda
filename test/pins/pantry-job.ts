import { readFileSync } from 'node:fs';
import { checkJob, type JobDocument } from '../../src/job/index.ts';

/** The pantry shelf of the examples as a plain document, for tests to change. A new one each time. */
export interface PlainPantry {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: { readonly rack: Record<string, Record<string, unknown>[]> };
}

/** Fields to set, by the id of a record, pin or lot. */
export type Changes = Readonly<Record<string, object>>;

/** The pantry shelf after fields were set, not yet checked. */
export function changed(changes: Changes): PlainPantry {
  const job = JSON.parse(
    readFileSync(new URL('../../examples/pantry-shelf.json', import.meta.url), 'utf8'),
  ) as PlainPantry;
  const all = [...job.design.records, ...job.shop.rack.pins!, ...job.shop.rack.lots!];
  for (const [id, fields] of Object.entries(changes)) {
    const found = all.find((x) => x.id === id);
    if (!found) throw new Error(`nothing is called ${id}`);
    Object.assign(found, fields);
  }
  return job;
}

/** The same as a job. */
export function pantry(changes: Changes = {}): JobDocument {
  const read = checkJob(changed(changes));
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}
