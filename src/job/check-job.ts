import type { Snag } from '../snag/index.ts';
import { checkForm, type Rest } from './check-form.ts';
import { checkFormulas } from './check-formulas.ts';
import { checkLengths } from './check-lengths.ts';
import { checkReferences } from './check-references.ts';
import { checkStructure } from './check-structure.ts';
import { type JobDocument, VERSION } from './document.ts';
import { withMissingIds } from './missing-ids.ts';
import { readPlace } from './place-in-document.ts';

/** A document that has been read: either a valid job, or everything that is wrong with it. */
export type CheckedJob =
  | { readonly ok: true; readonly job: JobDocument }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/**
 * Checks a value against the whole of what a job must be and tells every fault at once, each with its path.
 * Missing record ids are filled in from their place. The value itself is left as it is.
 */
export function checkJob(value: unknown): CheckedJob {
  const newer = newerVersion(value);
  if (newer) return { ok: false, snags: [newer] };
  const form = checkForm(withMissingIds(value));
  if (!form.ok) return { ok: false, snags: [...form.snags, ...alsoWrong(form.snags, form.rest, value)] };
  const snags = [
    ...checkReferences(form.job),
    ...checkStructure(form.job),
    ...checkLengths(form.job),
    ...checkFormulas(form.job),
  ];
  return snags.length ? { ok: false, snags } : { ok: true, job: form.job };
}

/** Faults of reference and structure in what can be read beside faults of form, less those that follow from these. */
function alsoWrong(faults: readonly Snag[], rest: Rest, value: unknown): readonly Snag[] {
  const said = new Set(faults.map(({ where }) => where.path));
  const touched = new Set(faults.map(({ where }) => where.path?.split('/').slice(0, 3).join('/')));
  const named = idsIn(value);
  const structure = rest.whole ? checkStructure(rest.job) : [];
  const formulas = rest.whole ? checkFormulas(rest.job) : [];
  return [...checkReferences(rest.job), ...structure, ...checkLengths(rest.job), ...formulas].filter(
    ({ code, where }) => {
      const refersTo = readPlace(rest.job, where.path ?? '');
      if (code === 'document.no-such-lot' && !rest.hasRack) return false;
      if (code.startsWith('document.no-such-') && named.has(refersTo)) return false;
      // A record whose split or kind can't be read may well be fine otherwise.
      if (code.startsWith('design.') && touched.has(`design/records/${where.record}`)) return false;
      return !said.has(where.path);
    },
  );
}

/** Every id that stands anywhere in a value. */
function idsIn(value: unknown): ReadonlySet<unknown> {
  const ids = new Set<unknown>();
  const waiting = [value];
  while (waiting.length > 0) {
    const at = waiting.pop();
    if (typeof at !== 'object' || at === null) continue;
    if ('id' in at) ids.add(at.id);
    waiting.push(...Object.values(at));
  }
  return ids;
}

/** Reads a job from the text of a file. */
export function readJob(text: string): CheckedJob {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (e) {
    return { ok: false, snags: [notJson(e)] };
  }
  return checkJob(value);
}

function notJson(e: unknown): Snag {
  return {
    code: 'document.not-json',
    level: 'stop',
    where: { path: '' },
    sentence: `The file is not JSON: ${e instanceof Error ? e.message : String(e)}.`,
    cures: [{ says: 'Look for a missing comma, quote or bracket near that place.' }],
  };
}

function newerVersion(value: unknown): Snag | undefined {
  const version = typeof value === 'object' && value !== null ? Reflect.get(value, 'version') : undefined;
  if (typeof version !== 'number' || version <= VERSION) return undefined;
  return {
    code: 'document.newer-version',
    level: 'stop',
    where: { path: 'version' },
    sentence: `The file is of version ${version}; this program reads version ${VERSION}.`,
    cures: [{ says: 'Open it with the newer program that wrote it. The file was left as it was.' }],
  };
}
