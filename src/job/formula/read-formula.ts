import jsep from 'jsep';
import type { Misread } from '../../measure/index.ts';
import { type Formula, FUNCTIONS } from './formula.ts';
import { lowest, misread, type Token, tokensOf } from './tokens.ts';

/** A formula that was read. */
export interface ReadFormula {
  readonly ok: true;
  readonly formula: Formula;
}

/** What a part of a formula is: a size, or a bare number that can still become either a factor or a size. */
type Value =
  | { readonly is: 'size'; readonly formula: Formula }
  | {
      readonly is: 'number';
      readonly over: number;
      readonly under: number;
      readonly says: string;
      /** The same as a size, in the shop's units. */
      readonly size: () => Formula;
    };

/** Each word that stands for something is a letter of its own to the parser, at its own place. */
const FIRST_LETTER = 0xe000;

/** A fault inside the tree; it is caught where the tree is read. */
class Refusal extends Error {
  readonly at: number;

  constructor(at: number, what: string) {
    super(what);
    this.at = at;
  }
}

/**
 * Reads a size worked out from named sizes: `width / 3 - gap`, `max(2 * side, 40 mm)`, `down(width / 3, 1/16 in)`.
 * Sizes are added, subtracted, multiplied and divided by bare numbers; a bare number that is added, compared or stands
 * alone is a size in the shop's units. `isKnown` helps to tell a hyphen in a name from a minus; without it a hyphen
 * between letters belongs to the name. Never throws: what can't be read says why and where.
 */
export function readFormula(
  text: string,
  isKnown: (name: string) => boolean = () => false,
): ReadFormula | Misread {
  const words = tokensOf(text, isKnown);
  if (!words.ok) return words;
  const plain = [...' '.repeat(text.length)];
  words.tokens.forEach((t, i) => {
    plain[t.at] = t.is === 'sign' ? t.text : String.fromCharCode(FIRST_LETTER + i);
  });
  try {
    const tree = parse(plain.join(''), text.length);
    return { ok: true, formula: sizeOf(partOf(tree, words.tokens)) };
  } catch (e) {
    if (e instanceof Refusal) return misread(text, e.at, e.message);
    throw e;
  }
}

function parse(plain: string, length: number): jsep.Expression {
  if (plain.trim() === '') throw new Refusal(0, 'a size is missing');
  try {
    return jsep(plain);
  } catch (e) {
    const at: unknown = typeof e === 'object' && e !== null ? Reflect.get(e, 'index') : undefined;
    if (typeof at !== 'number') throw e;
    const place = Math.min(at, length - 1);
    const opened = plain.split('(').length > plain.split(')').length;
    throw new Refusal(
      place,
      opened
        ? 'a bracket is not closed'
        : plain[place] === ')'
          ? 'this bracket closes none'
          : 'a size is missing here',
    );
  }
}

function partOf(tree: jsep.Expression, tokens: readonly Token[]): Value {
  const node = tree as jsep.CoreExpression;
  switch (node.type) {
    case 'Identifier':
      return wordOf(node as jsep.Identifier, tokens);
    case 'UnaryExpression': {
      const { operator, argument } = node as jsep.UnaryExpression;
      const value = partOf(argument, tokens);
      return operator === '-' ? times(value, -1, 1, `-${inner(saysOf(value))}`) : value;
    }
    case 'BinaryExpression':
      return combined(node as jsep.BinaryExpression, tokens);
    case 'CallExpression':
      return called(node as jsep.CallExpression, tokens);
    case 'Compound':
    case 'SequenceExpression': {
      const list = (node as { body?: jsep.Expression[]; expressions?: jsep.Expression[] }) ?? {};
      const second = list.body?.[1] ?? list.expressions?.[1];
      throw new Refusal(
        second ? placeOf(second, tokens) : 0,
        second ? 'a sign is missing before this' : 'a size is missing',
      );
    }
    default:
      throw new Refusal(0, 'this can’t be reckoned');
  }
}

function wordOf({ name }: jsep.Identifier, tokens: readonly Token[]): Value {
  const token = tokens[name.charCodeAt(0) - FIRST_LETTER]!;
  if (name.length > 1)
    throw new Refusal(tokens[name.charCodeAt(1) - FIRST_LETTER]!.at, 'a sign is missing before this');
  const { text, at } = token;
  if (token.is === 'number') {
    const size = (): Formula => ({ is: 'length', text, at: at + 1, says: text });
    return { is: 'number', over: token.over, under: token.under, says: text, size };
  }
  if (token.is === 'length') return { is: 'size', formula: { is: 'length', text, at: at + 1, says: text } };
  if (Object.hasOwn(FUNCTIONS, text)) throw new Refusal(at, `“${text}” wants sizes in brackets behind it`);
  return { is: 'size', formula: { is: 'name', name: text, at: at + 1, says: text } };
}

function combined({ operator, left, right }: jsep.BinaryExpression, tokens: readonly Token[]): Value {
  const a = partOf(left, tokens);
  const b = partOf(right, tokens);
  const at = placeOf(right, tokens);
  const says = `${operator === '*' || operator === '/' ? inner(saysOf(a)) : saysOf(a)} ${operator} ${operator === '+' ? saysOf(b) : inner(saysOf(b))}`;
  switch (operator) {
    case '+':
    case '-': {
      const formula = (): Formula => ({
        is: operator === '+' ? 'sum' : 'less',
        left: sizeOf(a),
        right: sizeOf(b),
        says,
      });
      if (a.is === 'size' || b.is === 'size') return { is: 'size', formula: formula() };
      const sign = operator === '+' ? 1 : -1;
      return number(a.over * b.under + sign * b.over * a.under, a.under * b.under, says, at, formula);
    }
    case '*':
      if (a.is === 'size' && b.is === 'size')
        throw new Refusal(at, 'a size times a size is an area; one of the two must be a bare number');
      return b.is === 'number'
        ? times(a, b.over, b.under, says, at)
        : times(
            b,
            (a as typeof a & { is: 'number' }).over,
            (a as typeof a & { is: 'number' }).under,
            says,
            at,
          );
    case '/':
      if (b.is === 'size') throw new Refusal(at, 'a size is divided by a bare number, not by a size');
      if (b.over === 0) throw new Refusal(at, 'nothing can be divided by 0');
      return times(a, b.under, b.over, says, at);
    default:
      throw new Refusal(at, `“${operator}” has no meaning here`);
  }
}

function called(call: jsep.CallExpression, tokens: readonly Token[]): Value {
  const callee = call.callee as jsep.Identifier;
  const token = callee.type === 'Identifier' ? tokens[callee.name.charCodeAt(0) - FIRST_LETTER] : undefined;
  const at = token?.at ?? 0;
  const word = token?.text ?? '';
  const takes = token?.is === 'name' && Object.hasOwn(FUNCTIONS, word) ? FUNCTIONS[word] : undefined;
  if (!takes)
    throw new Refusal(at, `before a bracket stands a sign, or one of ${Object.keys(FUNCTIONS).join(', ')}`);
  const of = call.arguments.map((a) => sizeOf(partOf(a, tokens)));
  if (of.length < takes[0] || of.length > takes[1])
    throw new Refusal(
      at,
      takes[0] === takes[1]
        ? `“${word}” wants a size and the step to round it to, with a comma between`
        : `“${word}” wants two sizes or more, with commas between`,
    );
  const says = `${word}(${of.map((f) => f.says).join(', ')})`;
  if (word === 'min' || word === 'max')
    return { is: 'size', formula: { is: word === 'min' ? 'least' : 'greatest', of, says } };
  const how = word as 'down' | 'up' | 'nearest';
  return { is: 'size', formula: { is: 'round', of: of[0]!, step: of[1]!, how, says } };
}

/** A value times over / under. */
function times(value: Value, over: number, under: number, says: string, at = 0): Value {
  const scaled = (of: Formula): Formula => {
    const factor = lowest(over, under);
    if (!factor) throw new Refusal(at, 'this number can’t be reckoned with');
    return { is: 'scaled', of, ...factor, says };
  };
  if (value.is === 'size') return { is: 'size', formula: scaled(value.formula) };
  return number(value.over * over, value.under * under, says, at, () => scaled(value.size()));
}

function number(over: number, under: number, says: string, at: number, size: () => Formula): Value {
  const found = lowest(over, under);
  if (!found) throw new Refusal(at, 'this number can’t be reckoned with');
  return { is: 'number', ...found, says, size };
}

function sizeOf(value: Value): Formula {
  return value.is === 'size' ? value.formula : value.size();
}

function saysOf(value: Value): string {
  return value.is === 'size' ? value.formula.says : value.says;
}

/** A sum in brackets, where it stands inside a product. */
function inner(says: string): string {
  let depth = 0;
  for (const [i, c] of [...says].entries()) {
    if (c === '(') depth++;
    else if (c === ')') depth--;
    else if (depth === 0 && i > 0 && (c === '+' || c === '-') && says[i - 1] === ' ') return `(${says})`;
  }
  return says;
}

/** The first place of a part of the tree. */
function placeOf(tree: jsep.Expression, tokens: readonly Token[]): number {
  const letters = /[\uE000-\uF8FF]/.exec(JSON.stringify(tree));
  return letters ? (tokens[letters[0].charCodeAt(0) - FIRST_LETTER]?.at ?? 0) : 0;
}
