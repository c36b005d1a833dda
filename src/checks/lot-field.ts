import type { JobDocument } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';

/** The record and field whose value is the lot that a part is cut from. */
export function fieldThatNames(
  job: JobDocument,
  part: Part,
): { readonly record: string; readonly field: string } | undefined {
  const record = job.design.records.find((r) => r.id === part.record);
  for (const field of ['board', 'strip', 'edging'])
    if (record && Reflect.get(record, field) === part.lot) return { record: record.id, field };
  const box = job.design.records.find((r) => r.kind === 'case');
  if (record?.kind === 'shelf' || record?.kind === 'divider') return { record: record.id, field: 'board' };
  return box?.kind === 'case' && box.board === part.lot ? { record: box.id, field: 'board' } : undefined;
}
