import * as v from 'valibot';
import type { Cure, Snag } from '../snag/index.ts';
import { JobDocument } from './document.ts';
import { DesignRecord } from './records/design-record.ts';
import type { Lot } from './shop/rack.ts';
import { wrongValue } from './wrong-value.ts';

/** What reading a value as a job comes to: the job, or its faults of form and what can still be read beside them. */
export type CheckedForm =
  | { readonly ok: true; readonly job: JobDocument }
  | { readonly ok: false; readonly snags: readonly Snag[]; readonly rest: Rest };

/** The sound records and lots of a document with faults; what is faulty in them has been left out. */
export interface Rest {
  readonly job: JobDocument;
  /** Whether every record could be read, so that what is missing really is. */
  readonly whole: boolean;
  /** Whether there is a rack to look a lot up on. */
  readonly hasRack: boolean;
}

type Issue = v.BaseIssue<unknown>;

/** So many unknown fields of one object are told at once, at most. */
const MOST_UNKNOWN = 50;

/** Checks fields, kinds and texts, each on its own. Every fault has the path of its field. */
export function checkForm(value: unknown): CheckedForm {
  const issues: Issue[] = [];
  let at = value;
  let parsed = v.safeParse(JobDocument, at);
  // The library tells one unknown field of an object at a time.
  for (let round = 0; round < MOST_UNKNOWN && !parsed.success; round++) {
    const unknown = parsed.issues.filter(isUnknownField);
    if (unknown.length === 0) break;
    issues.push(...unknown);
    for (const issue of unknown) at = without(at, keysOf(issue));
    parsed = v.safeParse(JobDocument, at);
  }
  if (parsed.success && issues.length === 0) return { ok: true, job: parsed.output };
  if (!parsed.success) issues.push(...parsed.issues);
  for (const issue of issues) at = without(at, keysOf(issue));
  return { ok: false, snags: issues.map(faultOf), rest: restOf(at) };
}

/** The value without what stands at the end of a path; entries of lists leave a gap, so that the others keep their number. */
function without(value: unknown, keys: readonly PropertyKey[]): unknown {
  const [key, ...deeper] = keys;
  if (key === undefined || typeof value !== 'object' || value === null) return undefined;
  if (Array.isArray(value))
    return value.map((entry, i) =>
      i === key ? (deeper.length ? without(entry, deeper) : undefined) : entry,
    );
  return Object.fromEntries(
    Object.entries(value).flatMap(([name, inner]) =>
      name !== key ? [[name, inner]] : deeper.length ? [[name, without(inner, deeper)]] : [],
    ),
  );
}

/** References need ids, parents, kinds and forms alone; what has lost one of these is left out. */
function restOf(value: unknown): Rest {
  const design = listAt(value, ['design', 'records']);
  const lots = listAt(value, ['shop', 'rack', 'lots']).filter(
    (l) => isNamed(l) && typeof l.form === 'string',
  ) as Lot[];
  const list = (...path: string[]) => listAt(value, path).filter(isNamed) as never;
  const kinds = DesignRecord.options.map((o) => o.entries.kind.literal as string);
  const records = design.filter(
    (r) =>
      isNamed(r) &&
      kinds.includes(String(r.kind)) &&
      (r.kind === 'piece' || r.kind === 'size' || typeof r.parent === 'string'),
  ) as unknown as DesignRecord[];
  const rack = {
    lots: lots.map((lot) => ({ ...lot, stock: listAt(lot, ['stock']).filter(isNamed) })),
    screws: list('shop', 'rack', 'screws'),
    bits: list('shop', 'rack', 'bits'),
    hinges: list('shop', 'rack', 'hinges'),
    pins: list('shop', 'rack', 'pins'),
    fixings: list('shop', 'rack', 'fixings'),
    runners: list('shop', 'rack', 'runners'),
  };
  const shop = { units: unitsOf(value), tools: list('shop', 'tools'), people: list('shop', 'people'), rack };
  return {
    job: { design: { records }, shop } as unknown as JobDocument,
    whole: records.length === design.length && design.length > 0,
    hasRack: lots.length > 0,
  };
}

function unitsOf(value: unknown): 'mm' | 'in' {
  const shop = typeof value === 'object' && value !== null ? Reflect.get(value, 'shop') : undefined;
  return typeof shop === 'object' && shop !== null && Reflect.get(shop, 'units') === 'in' ? 'in' : 'mm';
}

function listAt(value: unknown, path: readonly string[]): readonly unknown[] {
  let at = value;
  for (const step of path) at = typeof at === 'object' && at !== null ? Reflect.get(at, step) : undefined;
  return Array.isArray(at) ? at : [];
}

function isNamed(x: unknown): x is Record<string, unknown> {
  return typeof x === 'object' && x !== null && typeof Reflect.get(x, 'id') === 'string';
}

function isUnknownField(issue: Issue): boolean {
  return issue.type === 'strict_object' && issue.expected === 'never';
}

function keysOf(issue: Issue): readonly PropertyKey[] {
  return (issue.path ?? []).map((item) => item.key as PropertyKey);
}

function faultOf(issue: Issue): Snag {
  const path = pathOf(issue);
  const last = path.split('/').at(-1) ?? '';
  const known = knownFault(issue, last);
  return { code: known.code, level: 'stop', where: { path }, sentence: known.sentence, cures: [known.cure] };
}

function knownFault(issue: Issue, field: string): { code: string; sentence: string; cure: Cure } {
  if (isUnknownField(issue))
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
      cure: { says: cureOfValue(issue, field) },
    };
  const limit = /^(>=|<=)(.+)$/.exec(issue.expected ?? '');
  if (limit)
    return {
      code: 'document.wrong-value',
      sentence: `“${field}” should be ${limit[2]} or ${limit[1] === '>=' ? 'more' : 'less'}, but is ${issue.received}.`,
      cure: { says: `Write a number of ${limit[2]} or ${limit[1] === '>=' ? 'more' : 'less'}.` },
    };
  return { code: 'document.wrong-value', ...wrongValue(field, issue.expected, issue.received) };
}

/** Only what is typed as a text can be a size; a list that is too short wants another entry. */
function cureOfValue(issue: Issue, field: string): string {
  if (Array.isArray(issue.input))
    return `Put what belongs there into “${field}”, or leave the field out if it may be.`;
  return 'Write it like 590 mm, 23 1/4", width / 3 - 20 mm, 60 kg.';
}

function pathOf(issue: Issue): string {
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
