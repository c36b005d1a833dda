import * as v from 'valibot';
import type { Cure, Snag } from '../snag/index.ts';
import { checkReferences } from './check-references.ts';
import { checkStructure } from './check-structure.ts';
import { JobDocument, VERSION } from './document.ts';
import { withMissingIds } from './missing-ids.ts';

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
  const parsed = v.safeParse(JobDocument, withMissingIds(value));
  if (!parsed.success) return { ok: false, snags: parsed.issues.map((issue) => faultOf(issue)) };
  const snags = [...checkReferences(parsed.output), ...checkStructure(parsed.output)];
  return snags.length ? { ok: false, snags } : { ok: true, job: parsed.output };
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

function faultOf(issue: v.BaseIssue<unknown>): Snag {
  const path = pathOf(issue);
  const last = path.split('/').at(-1) ?? '';
  const known = knownFault(issue, last);
  return { code: known.code, level: 'stop', where: { path }, sentence: known.sentence, cures: [known.cure] };
}

function knownFault(
  issue: v.BaseIssue<unknown>,
  field: string,
): { code: string; sentence: string; cure: Cure } {
  if (issue.type === 'strict_object' && issue.expected === 'never')
    return {
      code: 'document.unknown-field',
      sentence: `“${field}” is not a field that is known here.`,
      cure: { says: 'Check its spelling, or take it out.' },
    };
  if (issue.received === 'undefined')
    return {
      code: 'document.missing-field',
      sentence: `“${field}” is missing.`,
      cure: { says: `Add “${field}”.` },
    };
  if (issue.type === 'check' || issue.type === 'regex' || issue.type === 'min_length')
    return {
      code: 'document.unreadable-value',
      sentence: `${capital(issue.message)}.`,
      cure: { says: 'Write it like 590 mm, 23 1/4", 60 kg.' },
    };
  return {
    code: 'document.wrong-value',
    sentence: `“${field}” should be ${issue.expected ?? 'something else'}, but is ${issue.received}.`,
    cure: { says: 'Write one of the values that are known there.' },
  };
}

function pathOf(issue: v.BaseIssue<unknown>): string {
  const steps: string[] = [];
  for (const item of issue.path ?? []) {
    const parent = item.input;
    const entry = Array.isArray(parent) ? parent[item.key as number] : undefined;
    const id = typeof entry === 'object' && entry !== null ? Reflect.get(entry, 'id') : undefined;
    steps.push(typeof id === 'string' ? id : String(item.key));
  }
  return steps.join('/');
}

function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1).replace(/\.$/, '');
}
