import { type JobDocument, treeOf } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';

/** The record and field whose value is the lot that a part is cut from. */
export function fieldThatNames(
  job: JobDocument,
  part: Part,
): { readonly record: string; readonly field: string } | undefined {
  const tree = treeOf(job);
  const record = tree.get(part.record);
  for (const field of ['board', 'strip', 'edging', 'bottomBoard', 'frontBoard'])
    if (record && Reflect.get(record, field) === part.lot) return { record: record.id, field };
  if (record?.kind === 'shelf' || record?.kind === 'divider' || record?.kind === 'pins')
    return { record: record.id, field: 'board' };
  const box = tree.caseOf(part.record);
  return box?.board === part.lot ? { record: box.id, field: 'board' } : undefined;
}
