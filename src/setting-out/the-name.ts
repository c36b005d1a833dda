/** `shelf 2`, `loose shelf 1 in jars`, but not `edging for shelf 2`: a noun that its own number tells from others. */
const NUMBERED = /^(?:(?!(?:for|of|in|on|at)\b)[a-z]+ )+\d+\b/;

/** A part’s name in a sentence: with its article, but for what bears a number. */
export function theName({ name }: { readonly name: string }): string {
  return NUMBERED.test(name) ? name : `the ${name}`;
}
