import type { Rule } from './snag.ts';

/** A rule's source for reading. A figure that was not read in its source says so, once; trade practice has none. */
export function sourceWords({ source, confirmed }: Pick<Rule, 'source' | 'confirmed'>): string {
  return confirmed || /common practice|from memory/.test(source) ? source : `${source}, from memory`;
}
