import { readFileSync } from 'node:fs';
import { checkJob, type JobDocument } from '../../src/job/index.ts';
import type { Changes } from './door-job.ts';

/** The radio station of the examples as a plain document, for tests to change. A new one each time. */
export function radioStation(changes: Changes = {}): {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: { readonly rack: { readonly lots: Record<string, unknown>[] } };
} {
  const job = JSON.parse(readFileSync(new URL('../../examples/radio-station.json', import.meta.url), 'utf8'));
  for (const [id, fields] of Object.entries(changes))
    Object.assign(
      [...job.design.records, ...job.shop.rack.lots].find((x) => x.id === id),
      fields,
    );
  return job;
}

/** Its job after fields of records or lots were set, by id. */
export function slidingJob(changes: Changes = {}): JobDocument {
  const read = checkJob(radioStation(changes));
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}
