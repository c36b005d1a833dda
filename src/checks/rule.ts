import type { Sourced } from '../materials/index.ts';
import type { LengthRow } from '../measure/index.ts';
import type { Rule } from '../snag/index.ts';

/** A row of a table, as the rule that a snag rests on. */
export function ruleOf(row: Sourced & { readonly says: string }): Rule {
  return { says: row.says, source: row.source, confirmed: row.confirmed };
}

/** A length that the trade goes by, as a rule. Such rows are common practice, and count as not confirmed. */
export function ruleOfLength({ says, source }: LengthRow): Rule {
  return { says, source, confirmed: false };
}

/** What every careful maker does, where no table has it. */
export function practice(says: string): Rule {
  return { says, source: 'common practice', confirmed: false };
}
