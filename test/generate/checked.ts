import { checkJob, type JobDocument } from '../../src/job/index.ts';

/** A generated document as a job; it must be without a fault. */
export function checked(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}
