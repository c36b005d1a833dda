import type { Cure } from '../snag/index.ts';

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text in quotes',
  number: 'a number',
  boolean: 'true or false',
  Array: 'a list',
  Object: 'a group of fields',
};

/** Says in words that a value is none of those that are known there, or of another kind, and what to write. */
export function wrongValue(
  field: string,
  expected: string | null,
  received: string,
): { readonly sentence: string; readonly cure: Cure } {
  const name = /^\d+$/.test(field) ? `Entry ${Number(field) + 1}` : `“${field}”`;
  const wanted = expected === null ? 'something else' : oneOf(expected.replace(/^\(|\)$/g, '').split(' | '));
  return {
    sentence: `${name} should be ${wanted}, but is ${inWords(received)}.`,
    cure: { says: expected === null ? 'Write one of the values that are known there.' : `Write ${wanted}.` },
  };
}

function oneOf(values: readonly string[]): string {
  const words = values.map(inWords);
  const last = words.at(-1)!;
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${last}` : last;
}

function inWords(value: string): string {
  return KINDS[value] ?? value.replace(/^"(.*)"$/, '“$1”');
}
