import { applyEdit, type Edit, inverseOf, type JobDocument } from '../../job/index.ts';
import type { Snag } from '../../snag/index.ts';

/** A job with the way back and the way forth: each step is an edit as a value. */
export interface History {
  readonly job: JobDocument;
  /** Edits that lead back, the latest last. */
  readonly back: readonly Edit[];
  /** Edits that were undone, the next one last. */
  readonly forth: readonly Edit[];
}

export type Stepped =
  | { readonly ok: true; readonly history: History }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** How many steps are kept. */
const DEEPEST = 500;

export function begin(job: JobDocument): History {
  return { job, back: [], forth: [] };
}

/** A new edit; what was undone before can then no longer be redone. */
export function commit(history: History, edit: Edit): Stepped {
  const edited = applyEdit(history.job, edit);
  if (!edited.ok) return edited;
  // What was done on the bench is done: there is no way back across it.
  const back = isWork(edit) ? [] : [...history.back, inverseOf(history.job, edit)].slice(-DEEPEST);
  return { ok: true, history: { job: edited.job, back, forth: [] } };
}

/** Whether an edit tells of work: a tick, or what was measured. */
function isWork(edit: Edit): boolean {
  return edit.edit === 'set' && edit.at.startsWith('work/');
}

export function undo(history: History): History {
  return step(history, history.back, (job, left, inverse) => ({
    job,
    back: left,
    forth: [...history.forth, inverse],
  }));
}

export function redo(history: History): History {
  return step(history, history.forth, (job, left, inverse) => ({
    job,
    back: [...history.back, inverse],
    forth: left,
  }));
}

function step(
  history: History,
  list: readonly Edit[],
  made: (job: JobDocument, left: readonly Edit[], inverse: Edit) => History,
): History {
  const edit = list.at(-1);
  if (!edit) return history;
  const edited = applyEdit(history.job, edit);
  // A kept edit fits the document it was made for; if it doesn't, the way ends here rather than in another document.
  if (!edited.ok) return { ...history, back: [], forth: [] };
  return made(edited.job, list.slice(0, -1), inverseOf(history.job, edit));
}
