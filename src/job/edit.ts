import type { CureEdit, Snag } from '../snag/index.ts';
import { checkJob } from './check-job.ts';
import type { JobDocument } from './document.ts';
import { readPlace, writePlace } from './place-in-document.ts';
import type { DesignRecord } from './records/design-record.ts';

/** A change of the document, as a value that can be kept, sent and undone. */
export type Edit =
  /** Puts a value at a place; without a value it takes the field away. */
  | { readonly edit: 'set'; readonly at: string; readonly value?: unknown }
  /** Adds a record at a position of the list (the end when absent). */
  | { readonly edit: 'add'; readonly record: DesignRecord; readonly position?: number }
  | { readonly edit: 'remove'; readonly id: string }
  /** Several, one after the other, as one step. */
  | { readonly edit: 'all'; readonly of: readonly Edit[] };

/** What an edit comes to: a new document, or the reasons why not. The old document is never touched. */
export type Edited =
  | { readonly ok: true; readonly job: JobDocument }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** Applies an edit and checks the result as a whole, so that a document is always a valid one. */
export function applyEdit(job: JobDocument, edit: Edit): Edited {
  const changed = change(job, edit);
  if (changed === undefined) return { ok: false, snags: [leadsNowhere(edit)] };
  return checkJob(changed);
}

/** What a cure does to the document, as one step. */
export function editOfCure(edits: readonly CureEdit[]): Edit {
  return {
    edit: 'all',
    of: edits.map(({ record, field, value }) => ({
      edit: 'set',
      at: `design/records/${record}/${field}`,
      value,
    })),
  };
}

/** The edit that leads back from the result of `edit` to `job`. Needs only the document before. */
export function inverseOf(job: JobDocument, edit: Edit): Edit {
  switch (edit.edit) {
    case 'set': {
      // The first value that is measured brings the list with it, and takes it away again.
      if (edit.at.startsWith(MEASURED) && job.work.measured === undefined)
        return { edit: 'set', at: 'work/measured' };
      const before = readPlace(job, edit.at);
      return before === undefined
        ? { edit: 'set', at: edit.at }
        : { edit: 'set', at: edit.at, value: before };
    }
    case 'add':
      return { edit: 'remove', id: edit.record.id };
    case 'remove': {
      const position = job.design.records.findIndex((r) => r.id === edit.id);
      const record = job.design.records[position];
      if (!record) throw new Error(`nothing to invert: no record ${edit.id}`);
      return { edit: 'add', record, position };
    }
    case 'all': {
      const back: Edit[] = [];
      let at: unknown = job;
      for (const e of edit.of) {
        back.unshift(inverseOf(at as JobDocument, e));
        at = change(at as JobDocument, e);
      }
      return { edit: 'all', of: back };
    }
  }
}

/** Where measured values stand. */
const MEASURED = 'work/measured/';

function change(job: JobDocument, edit: Edit): unknown {
  const records = job.design.records;
  switch (edit.edit) {
    case 'set': {
      const first = edit.at.startsWith(MEASURED) && job.work.measured === undefined;
      const into = first ? { ...job, work: { ...job.work, measured: {} } } : job;
      const changed = writePlace(into, edit.at, edit.value);
      // An id is what others, and the way back, find a record by: a change that loses its own place is none.
      return readPlace(changed, edit.at) === edit.value ? changed : undefined;
    }
    case 'add': {
      const at = Math.min(Math.max(edit.position ?? records.length, 0), records.length);
      return withRecords(job, [...records.slice(0, at), edit.record, ...records.slice(at)]);
    }
    case 'remove':
      return records.some((r) => r.id === edit.id)
        ? withRecords(
            job,
            records.filter((r) => r.id !== edit.id),
          )
        : undefined;
    case 'all': {
      let at: unknown = job;
      for (const e of edit.of) {
        if (at === undefined) return undefined;
        at = change(at as JobDocument, e);
      }
      return at;
    }
  }
}

function withRecords(job: JobDocument, records: readonly DesignRecord[]): JobDocument {
  return { ...job, design: { ...job.design, records: [...records] } };
}

function leadsNowhere(edit: Edit): Snag {
  const path =
    edit.edit === 'set' ? edit.at : edit.edit === 'remove' ? `design/records/${edit.id}` : 'design';
  return {
    code: 'edit.no-such-place',
    level: 'stop',
    where: { path },
    sentence: `There is no “${path}” in the document to change.`,
    cures: [{ says: 'Change something that is there, or add it first.' }],
  };
}
