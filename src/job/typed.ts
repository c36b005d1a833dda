import * as v from 'valibot';
import { parseLength, parseMass } from '../measure/index.ts';
import { readFormula } from './formula/read-formula.ts';

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

/** A size above nothing, as typed or worked out from others; what a formula comes to is known when it is set out. */
export const SizeFormula = formulaOr(SizeText);

/** A size of nothing or more, as typed or worked out from others. */
export const MarginFormula = formulaOr(MarginText);

function formulaOr(plain: typeof SizeText | typeof MarginText) {
  return v.pipe(
    v.string(),
    v.check(
      (text) => isFormula(text) || v.is(plain, text),
      (issue) => sizeProblem(issue.input, plain),
    ),
  );
}

/** Whether a text that is no plain length can be read as a formula. */
export function isFormula(text: string): boolean {
  return !parseLength(text, 'mm').ok && readFormula(text).ok;
}

function sizeProblem(text: string, plain: typeof SizeText | typeof MarginText): string {
  const formula = readFormula(text);
  // A number with something unknown behind it was meant as a length; anything with signs or words, as a formula.
  if (
    !formula.ok &&
    !parseLength(text, 'mm').ok &&
    (/[+*×÷·()/]|\s[-−]\s/u.test(text) || /^\s*[A-Za-z]/.test(text))
  )
    return formula.problem;
  const read = v.safeParse(plain, text);
  return read.issues?.[0].message ?? '';
}

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

/** Heat that something gives off: `60 W`. */
export const PowerText = v.pipe(
  v.string(),
  v.check(
    (text) => readPower(text) !== undefined,
    (issue) => `“${issue.input}” is no power such as 60 W`,
  ),
);

/** Reads a power, W; undefined when it can't be read, or is nothing or more than a cabinet holds. */
export function readPower(text: string): number | undefined {
  const read = /^(\d{1,5}(?:[.,]\d{1,2})?)\s*W$/.exec(text.trim());
  const watts = read ? Number(read[1]!.replace(',', '.')) : 0;
  return watts > 0 && watts <= 5000 ? watts : undefined;
}

/** What a stay holds about a hinge: `8 N m`, `60 in lb`. */
export const MomentText = v.pipe(
  v.string(),
  v.check(
    (text) => readMoment(text) !== undefined,
    (issue) => `“${issue.input}” is no moment such as 8 N m or 60 in lb`,
  ),
);

/** N m in an inch-pound of force: 0.0254 m times 4.4482216 N, both exact by definition. */
const INCH_POUND = 0.112984829;

/** Reads a moment, N m; undefined when it can't be read, or is nothing or more than any stay holds. */
export function readMoment(text: string): number | undefined {
  const read = /^(\d{1,4}(?:[.,]\d{1,2})?)\s*(N\s*m|in\s*lb)$/.exec(text.trim());
  const value = read ? Number(read[1]!.replace(',', '.')) * (read[2]!.startsWith('N') ? 1 : INCH_POUND) : 0;
  return value > 0 && value <= 500 ? value : undefined;
}

/** The share an opening takes of what its split divides: a length, a formula, `equal`, or `2 shares`. */
export const OpeningSizeText = v.pipe(
  v.string(),
  v.check(
    (text) => readOpeningSize(text) !== undefined,
    ({ input }) =>
      `“${input}” is neither a size, nor a formula, nor “equal”, nor a number of shares such as “2 shares”${/[+*×÷·()/]|\s[-−]\s/u.test(input) ? ` (${sizeProblem(input, SizeText)})` : ''}`,
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
  if (length.ok) return length.value > 0 ? { fixed: t } : undefined;
  return readFormula(t).ok ? { fixed: t } : undefined;
}

/** Ids are short words: letters, digits, and `-` or `.` inside. */
export const Id = v.pipe(
  v.string(),
  v.regex(/^[A-Za-z0-9][A-Za-z0-9.-]{0,59}$/, 'an id is letters and digits, with - or . inside, 60 at most'),
);

export const Name = v.pipe(v.string(), v.minLength(1, 'a name needs at least a letter'), v.maxLength(200));
