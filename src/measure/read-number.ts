/** A refusal: which character of the text (counted from 1) and a sentence that names the text and the place. */
export interface Misread {
  readonly ok: false;
  readonly at: number;
  readonly problem: string;
}

/** A number as written, held exactly as a fraction of whole numbers. */
export interface Figure {
  readonly ok: true;
  readonly over: bigint;
  readonly under: bigint;
  /** Written without fraction or decimals. */
  readonly whole: boolean;
  /** Written as `1,580`: a decimal comma, or thousands? The unit decides whether that can be told. */
  readonly doubtful: boolean;
}

const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
const HYPHENS = '‐‑‒–−';
const SLASHES = '⁄∕';
const FEET = '′’‘';
const INCHES = '″”“';

/** Longer texts are no length; the bound keeps the exact arithmetic small. */
const LONGEST_TEXT = 80;

/**
 * Reads one measure from left to right. The text is first brought to plain characters (`1¾″` to `1 3/4"`), and
 * every plain character remembers where it was typed, so that a problem can name the place.
 */
export class Reader {
  readonly text: string;
  private readonly plain: string;
  private readonly typedAt: readonly number[];
  private i = 0;

  constructor(text: string) {
    this.text = text;
    const { plain, typedAt } = plainly(text.slice(0, LONGEST_TEXT + 1));
    this.plain = plain;
    this.typedAt = typedAt;
  }

  get tooLong(): boolean {
    return this.text.length > LONGEST_TEXT;
  }

  /** A place to come back to, and to blame. */
  get place(): number {
    return this.i;
  }

  get atEnd(): boolean {
    return this.i >= this.plain.length;
  }

  skipSpace(): void {
    while (this.plain[this.i] === ' ') this.i++;
  }

  /** Takes `c` if it comes next. */
  take(c: string): boolean {
    if (!this.plain.startsWith(c, this.i)) return false;
    this.i += c.length;
    return true;
  }

  /** What comes next, without taking it. */
  peek(): string {
    return this.plain[this.i] ?? '';
  }

  goBack(place: number): void {
    this.i = place;
  }

  /** The letters that come next, in lower case, and a full stop after them (`in.`). */
  word(): string {
    const letters = /^[\p{L}]+/u.exec(this.plain.slice(this.i))?.[0] ?? '';
    this.i += letters.length;
    if (letters !== '' && this.peek() === '.') this.i++;
    return letters.toLowerCase();
  }

  misread(what: string, place = this.i): Misread {
    const at = (this.typedAt[place] ?? Math.min(this.text.length, LONGEST_TEXT)) + 1;
    if (this.text.trim() === '') return { ok: false, at, problem: what };
    const shown = this.text.length > 40 ? `${this.text.slice(0, 39)}…` : this.text;
    return { ok: false, at, problem: `\`${shown}\`: ${what}, at character ${at}` };
  }

  /** `23`, `23 1/4`, `1-3/4`, `3/8`, `0.164`, `12,7`. */
  figure(): Figure | Misread {
    const from = this.i;
    const first = this.digits();
    const mark = this.peek();
    if (mark === '.' || mark === ',') return this.decimals(first, from);
    if (first === '') return this.misread(this.atEnd ? 'a number is missing' : 'a number should stand here');
    if (mark === '/') return this.fraction(first);

    const afterWhole = this.i;
    const joined = this.take('-');
    if (!joined) this.skipSpace();
    const upperAt = this.i;
    const upper = this.digits();
    if (upper !== '' && this.peek() === '/') {
      const part = this.fraction(upper);
      if (!part.ok) return part;
      if (part.over >= part.under)
        return this.misread('the fraction after a whole number must be less than 1', upperAt);
      return { ...part, over: BigInt(first) * part.under + part.over };
    }
    if (joined) return this.misread('a hyphen joins a whole number to a fraction, as in 1-3/4', afterWhole);
    if (upper !== '') return this.misread('a second number stands here; write 1580, not 1 580', upperAt);
    this.i = afterWhole;
    return { ok: true, over: BigInt(first), under: 1n, whole: true, doubtful: false };
  }

  private digits(): string {
    const from = this.i;
    while (isDigit(this.peek())) this.i++;
    return this.plain.slice(from, this.i);
  }

  private fraction(upper: string): Figure | Misread {
    this.take('/');
    const at = this.i;
    const lower = this.digits();
    if (lower === '') return this.misread("the fraction's lower number is missing", at);
    if (BigInt(lower) === 0n) return this.misread("the fraction's lower number is 0", at);
    return { ok: true, over: BigInt(upper), under: BigInt(lower), whole: false, doubtful: false };
  }

  private decimals(first: string, from: number): Figure | Misread {
    const mark = this.peek();
    this.i++;
    const behind = this.digits();
    if (behind === '')
      return this.misread(
        first === '' ? 'a number should stand here' : 'a digit is missing after the decimal mark',
      );
    const next = this.peek();
    if (next === '.' || next === ',')
      return this.misread(
        'a number has one decimal mark; thousands are not set apart, because 1,580 and 1.580 mean different lengths in different countries',
      );
    if (next === '/') return this.misread('a fraction stands on whole numbers', from);
    return {
      ok: true,
      over: BigInt(first + behind),
      under: 10n ** BigInt(behind.length),
      whole: false,
      doubtful: mark === ',' && behind.length === 3 && /^[1-9]\d{0,2}$/.test(first),
    };
  }
}

/** The whole number nearest to over / under, halves away from zero, and whether nothing was lost. */
export function wholeNearest(over: bigint, under: bigint): { value: number; exact: boolean } {
  const size = over < 0n ? -over : over;
  const n = (2n * size + under) / (2n * under);
  return { value: Number(over < 0n ? -n : n) + 0, exact: n * under === size };
}

function isDigit(c: string): boolean {
  return c >= '0' && c <= '9';
}

/** Where a plain digit came from: neighbours of different kinds are different numbers (`2³⁄₈` is 2 and 3/8). */
type Kind = 'digit' | 'raised' | 'lowered' | 'vulgar' | 'other';

function plainly(text: string): { plain: string; typedAt: number[] } {
  let plain = '';
  const typedAt: number[] = [];
  let before: Kind = 'other';
  for (let at = 0; at < text.length; at++) {
    const [kind, put] = plainCharacter(text[at]!);
    const apart = kind !== 'other' && before !== 'other' && (kind !== before || kind === 'vulgar');
    for (const c of (apart ? ' ' : '') + put) {
      plain += c;
      typedAt.push(at);
    }
    before = kind;
  }
  return { plain, typedAt };
}

function plainCharacter(c: string): readonly [Kind, string] {
  if (isDigit(c)) return ['digit', c];
  if (VULGAR[c] !== undefined) return ['vulgar', VULGAR[c]];
  if (RAISED.includes(c)) return ['raised', String(RAISED.indexOf(c))];
  if (LOWERED.includes(c)) return ['lowered', String(LOWERED.indexOf(c))];
  if (HYPHENS.includes(c)) return ['other', '-'];
  if (SLASHES.includes(c)) return ['other', '/'];
  if (FEET.includes(c)) return ['other', "'"];
  if (INCHES.includes(c)) return ['other', '"'];
  if (/\s/u.test(c)) return ['other', ' '];
  return ['other', c];
}
