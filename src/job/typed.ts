import * as v from 'valibot';
import { parseLength, parseMass } from '../measure/index.ts';

/**
 * The document keeps what was typed. These schemas check that it can be read, and leave the text alone; a bare
 * number takes the document's units, which changes its size but not whether it can be read.
 */
export const LengthText = v.pipe(
  v.string(),
  v.check(
    (text) => parseLength(text, 'mm').ok,
    (issue) => lengthProblem(issue.input),
  ),
);

function lengthProblem(text: string): string {
  const read = parseLength(text, 'mm');
  return read.ok ? '' : read.problem;
}

/** A length above nothing. */
export const SizeText = v.pipe(
  LengthText,
  v.check(
    (text) => {
      const read = parseLength(text, 'mm');
      return !read.ok || read.value > 0;
    },
    (issue) => `“${issue.input}” must be more than nothing`,
  ),
);

/** A length of nothing or more. */
export const MarginText = v.pipe(
  LengthText,
  v.check(
    (text) => {
      const read = parseLength(text, 'mm');
      return !read.ok || read.value >= 0;
    },
    (issue) => `“${issue.input}” must not be negative`,
  ),
);

export const MassText = v.pipe(
  v.string(),
  v.check(
    (text) => parseMass(text).ok,
    (issue) => massProblem(issue.input),
  ),
);

function massProblem(text: string): string {
  const read = parseMass(text);
  return read.ok ? '' : read.problem;
}

/** The share an opening takes of what its split divides: a length, `equal`, or `2 shares`. */
export const OpeningSizeText = v.pipe(
  v.string(),
  v.check(
    (text) => readOpeningSize(text) !== undefined,
    (issue) => `“${issue.input}” is neither a size, nor “equal”, nor a number of shares such as “2 shares”`,
  ),
);

/** An opening's size as typed: fixed, or a whole number of hundredths of a share. */
export type OpeningSize = { readonly fixed: string } | { readonly weight: number };

/** Reads an opening's size; undefined when it can't be read. `equal` is one share. */
export function readOpeningSize(text: string): OpeningSize | undefined {
  const t = text.trim();
  if (t === 'equal') return { weight: 100 };
  const shares = /^(\d{1,4}(?:[.,]\d{1,2})?) shares?$/.exec(t);
  if (shares) {
    const weight = Math.round(Number(shares[1]!.replace(',', '.')) * 100);
    return weight > 0 ? { weight } : undefined;
  }
  const length = parseLength(t, 'mm');
  return length.ok && length.value > 0 ? { fixed: t } : undefined;
}

/** Ids are short words: letters, digits, and `-` or `.` inside. */
export const Id = v.pipe(
  v.string(),
  v.regex(/^[A-Za-z0-9][A-Za-z0-9.-]{0,59}$/, 'an id is letters and digits, with - or . inside, 60 at most'),
);

export const Name = v.pipe(v.string(), v.minLength(1, 'a name needs at least a letter'), v.maxLength(200));
