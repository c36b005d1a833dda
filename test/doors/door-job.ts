import { readFileSync } from 'node:fs';
import { checkJob, type JobDocument } from '../../src/job/index.ts';

/** The hall cupboard of the examples as a plain document, for tests to change. A new one each time. */
export interface PlainCupboard {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: {
    readonly rack: {
      readonly hinges: Record<string, unknown>[];
      readonly screws: Record<string, unknown>[];
      readonly lots: Record<string, unknown>[];
    };
  };
}

/** Fields to set, by the id of a record, hinge, screw or lot; a record without any is taken out. */
export type Changes = Readonly<Record<string, object | undefined>>;

export function hallCupboard(): PlainCupboard {
  return JSON.parse(readFileSync(new URL('../../examples/hall-cupboard.json', import.meta.url), 'utf8'));
}

/** The cupboard's job after fields of records, hinges, screws or lots were set, by id. */
export function cupboard(changes: Changes = {}, more: (job: PlainCupboard) => void = () => {}): JobDocument {
  const job = changed(changes);
  more(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

/** The same, not yet checked. */
export function changed(changes: Changes): PlainCupboard {
  const job = hallCupboard();
  const { hinges, screws, lots } = job.shop.rack;
  for (const [id, fields] of Object.entries(changes)) {
    const found = [...job.design.records, ...hinges, ...screws, ...lots].find((x) => x.id === id);
    if (!found) throw new Error(`nothing is called ${id}`);
    if (fields) Object.assign(found, fields);
    else job.design.records.splice(job.design.records.indexOf(found), 1);
  }
  return job;
}
