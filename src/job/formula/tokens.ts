import { type Misread, parseLength } from '../../measure/index.ts';

/** A word of a formula: something that stands for a size or a number, or a sign. */
export type Token =
  | { readonly is: 'length' | 'name'; readonly text: string; readonly at: number }
  | {
      readonly is: 'number';
      readonly text: string;
      readonly at: number;
      readonly over: number;
      readonly under: number;
    }
  | { readonly is: 'sign'; readonly text: string; readonly at: number };

const FIGURE = String.raw`(?:\d+ +\d+\/\d+|\d+\/\d+|\d+[.,]\d+|[.]\d+|\d* *[¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+)`;
const INCH = String.raw`(?:in(?:ch(?:es)?)?\b|"|''|″|”)`;
const FOOT = String.raw`(?:f(?:oo|ee)?t\b|'(?!')|′|’)`;
const METRE = String.raw`(?:[mc]?m(?:illimet(?:re|er)s?|entimet(?:re|er)s?|et(?:re|er)s?)?\b|(?:milli|centi)?met(?:re|er)s?\b)`;
const LENGTH = new RegExp(
  `${FIGURE} *(?:${METRE}|${INCH}|${FOOT}(?: *${FIGURE} *${INCH}|-${FIGURE} *${INCH})?)`,
  'iuy',
);
/** A fraction without a whole number is left to be a division, so that `width / 3/4` is `width / 12`. */
const NUMBER = /\d+ +\d+\/\d+|\d+[.,]\d+|\.\d+|\d+/uy;
const NAME = /[A-Za-z][A-Za-z0-9]*(?:[.-][A-Za-z0-9]+)*/y;
/** `1-3/4`: is that 1 3/4, or 1 less 3/4? */
const DOUBTFUL = /\d+-\d+\/\d+/y;
const SIGNS: Readonly<Record<string, string>> = {
  '+': '+',
  '-': '-',
  '−': '-',
  '–': '-',
  '*': '*',
  '×': '*',
  '·': '*',
  '/': '/',
  '÷': '/',
  '(': '(',
  ')': ')',
  ',': ',',
};

/** Longer formulas are none; whole numbers in them are at most so large, which keeps products exact. */
export const LONGEST_FORMULA = 200;
const LARGEST = 100_000;

/** A refusal that names the formula and the place. */
export function misread(text: string, at: number, what: string): Misread {
  const shown = text.length > 60 ? `${text.slice(0, 59)}…` : text;
  return { ok: false, at: at + 1, problem: `\`${shown}\`: ${what}, at character ${at + 1}` };
}

/**
 * The words of a formula in order. A `-` inside a name (`left-door`) is a minus where the whole is no known name but
 * what stands before it is.
 */
export function tokensOf(
  text: string,
  isKnown: (name: string) => boolean,
): { readonly ok: true; readonly tokens: readonly Token[] } | Misread {
  if (text.length > LONGEST_FORMULA) return misread(text, LONGEST_FORMULA, 'this is too long for a formula');
  const tokens: Token[] = [];
  let depth = 0;
  for (let at = 0; at < text.length; ) {
    const c = text[at]!;
    if (/\s/u.test(c)) {
      at++;
      continue;
    }
    const sign = SIGNS[c];
    if (sign !== undefined) {
      depth += sign === '(' ? 1 : sign === ')' ? -1 : 0;
      tokens.push({ is: 'sign', text: sign, at });
      at++;
      continue;
    }
    if (match(DOUBTFUL, text, at) !== undefined)
      return misread(text, at, 'write 1 3/4 for the fraction, or 1 - 3/4 to take it away');
    const figure = match(LENGTH, text, at);
    const bare = figure === undefined ? match(NUMBER, text, at) : undefined;
    const found = figure ?? bare;
    if (found !== undefined && depth > 0 && /\d,\d/.test(found))
      return misread(text, at, 'between brackets write 12.7 for a decimal, or “12, 7” for two sizes');
    if (figure !== undefined) {
      const read = parseLength(figure, 'mm');
      if (!read.ok) return misread(text, at, withoutPlace(read.problem));
      tokens.push({ is: 'length', text: figure, at });
    } else if (bare !== undefined) {
      const number = fractionOf(bare);
      if (!number) return misread(text, at, 'this number can’t be reckoned with');
      tokens.push({ is: 'number', text: bare, at, ...number });
    } else {
      const name = match(NAME, text, at);
      if (name === undefined) return misread(text, at, `“${c}” has no meaning here`);
      tokens.push({ is: 'name', text: knownPart(name, isKnown), at });
    }
    at += tokens.at(-1)!.text.length;
  }
  return { ok: true, tokens };
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

/** All of a name where it is known; otherwise what is known of it before a hyphen; otherwise all. */
function knownPart(name: string, isKnown: (name: string) => boolean): string {
  for (let part = name; part !== ''; part = part.slice(0, Math.max(0, part.lastIndexOf('-'))))
    if (isKnown(part)) return part;
  return name;
}

/** A bare number as whole over whole, in lowest terms. */
function fractionOf(text: string): { over: number; under: number } | undefined {
  const mixed = /^(\d+) +(\d+)\/(\d+)$/.exec(text);
  if (mixed) {
    const under = Number(mixed[3]);
    return lowest(Number(mixed[1]) * under + Number(mixed[2]), under);
  }
  const [whole = '', behind = ''] = text.split(/[.,]/);
  return lowest(Number(whole + behind), 10 ** behind.length);
}

/** over / under in lowest terms; undefined when under is 0 or they are too large to stay exact. */
export function lowest(over: number, under: number): { over: number; under: number } | undefined {
  if (under === 0 || !Number.isSafeInteger(over) || !Number.isSafeInteger(under)) return undefined;
  let [a, b] = [Math.abs(over), Math.abs(under)];
  while (b !== 0) [a, b] = [b, a % b];
  const sign = under < 0 ? -1 : 1;
  const [o, u] = [(sign * over) / a, (sign * under) / a];
  return Math.abs(o) <= LARGEST && u <= LARGEST ? { over: o + 0, under: u } : undefined;
}

function withoutPlace(problem: string): string {
  return problem.replace(/^`.*?`: /s, '').replace(/, at character \d+$/, '');
}
