import { readFileSync } from 'node:fs';
import { checkJob, type JobDocument } from '../../src/job/index.ts';

/** Fields to set, by the id of a record, hinge, stay, screw or lot; one without any is taken out. */
type Changes = Readonly<Record<string, object | undefined>>;

/** The toy chest of the examples, after changes, not yet checked. */
export function toyChest(changes: Changes = {}): {
  readonly design: { readonly records: Record<string, unknown>[] };
} {
  const job = JSON.parse(readFileSync(new URL('../../examples/toy-chest.json', import.meta.url), 'utf8'));
  const { hinges, stays, screws, lots } = job.shop.rack;
  for (const [id, fields] of Object.entries(changes)) {
    const list = [job.design.records, hinges, stays, screws, lots].find((l) =>
      l.some((x: { id: string }) => x.id === id),
    );
    if (!list) throw new Error(`nothing is called ${id}`);
    const found = list.find((x: { id: string }) => x.id === id);
    if (fields) Object.assign(found, fields);
    else list.splice(list.indexOf(found), 1);
  }
  return job;
}

/** Its job. */
export function chestJob(changes: Changes = {}): JobDocument {
  const read = checkJob(toyChest(changes));
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}
