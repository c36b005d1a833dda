import {
  type Formula,
  formatOf,
  formulaFields,
  isFormula,
  type NamedSize,
  readFormula,
  readOpeningSize,
} from '../../job/index.ts';
import { fromMm, LONGEST, parseLength, printLength, type Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** No formula comes to more: 10 m, as no size that is typed. Steps on the way may be larger, but stay within 32 bits. */
const MOST = fromMm(10_000);

/** Gives the size behind a name. */
export type Lookup = (name: NamedSize) => Traced;

/** Why a formula comes to no size. */
class NoSize extends Error {}

/**
 * What the formula typed at a path comes to, every step an entry of the ledger. Quotients go to the nearest tick.
 * Where it comes to nothing that can be built, a stop says so and nothing is given in its stead.
 */
export function reckon(
  draft: Draft,
  path: string,
  text: string,
  names: ReadonlyMap<string, NamedSize>,
  lookup: Lookup,
): Traced {
  const l = draft.ledger;
  const read = readFormula(text, (name) => names.has(name));
  if (!read.ok) throw new Error(`unchecked formula at ${path}: ${read.problem}`);
  const within = (value: number): void => {
    if (Math.abs(value) > LONGEST) throw new NoSize('is longer than anything that is built');
  };
  const of = (f: Formula): Traced => {
    const why = `${f.says}, at ${path}`;
    switch (f.is) {
      case 'length': {
        const length = parseLength(f.text, draft.job.shop.units);
        if (!length.ok) throw new Error(`unchecked length at ${path}: ${length.problem}`);
        return l.document(`${path}@${f.at}`, length.value, f.text);
      }
      case 'name': {
        const named = names.get(f.name);
        if (!named) throw new Error(`unchecked name at ${path}: ${f.name}`);
        return lookup(named);
      }
      case 'sum':
      case 'less': {
        const [a, b] = [of(f.left), of(f.right)];
        within(l.ticks(a) + (f.is === 'sum' ? l.ticks(b) : -l.ticks(b)));
        return l[f.is](why, a, b);
      }
      case 'scaled': {
        const a = of(f.of);
        within((l.ticks(a) * f.over) / f.under);
        return f.under === 1
          ? l.times(why, a, f.over)
          : l.fraction(why, a, f.over, f.under, 'nearest', `${path}: ${text}`);
      }
      case 'greatest':
      case 'least':
        return l[f.is](why, ...f.of.map(of));
      case 'round': {
        const [a, step] = [of(f.of), of(f.step)];
        if (l.ticks(step) <= 0) throw new NoSize('rounds to a step that is not above nothing');
        within(l.ticks(a) + l.ticks(step));
        return l.round(why, a, step, f.how);
      }
    }
  };
  const [record, field] = path.split('/').slice(2) as [string, string];
  try {
    const own = of(read.formula);
    // A formula that only names a size is still a step of its own.
    const found = read.formula.is === 'name' ? l.sum(`${text}, at ${path}`, own) : own;
    const size = l.ticks(found);
    const comes = `comes to ${printLength(size, formatOf(draft.job.shop)).text}`;
    if (size > MOST) throw new NoSize(`${comes}; the most there is here is 10 m`);
    if (size < 0 || (size === 0 && !mayBeNothing(draft, record, field)))
      throw new NoSize(`${comes}, which nothing can be made to`);
    return found;
  } catch (e) {
    if (!(e instanceof NoSize)) throw e;
    draft.stop('formula.no-size', { id: record }, field, `\`${text}\` ${e.message}.`, {
      says: 'Change the formula, or one of the sizes it rests on.',
    });
    return draft.nothing;
  }
}

function mayBeNothing(draft: Draft, record: string, field: string): boolean {
  const { kind } = draft.tree.get(record)!;
  return formulaFields(kind).some((f) => f.field === field && f.mayBeNothing);
}

/** Reckons every formula of the design; false when one of them comes to no size. */
export function formulasHold(draft: Draft): boolean {
  // Most sizes are plain lengths, and the same few.
  const plain = new Set<string>();
  for (const record of draft.job.design.records)
    for (const { field } of formulaFields(record.kind)) {
      const text: unknown = Reflect.get(record, field);
      if (typeof text !== 'string' || plain.has(text)) continue;
      if (field === 'size' && !('fixed' in (readOpeningSize(text) ?? {}))) continue;
      if (!isFormula(text)) {
        plain.add(text);
        continue;
      }
      draft.typed(`design/records/${record.id}/${field}`, text);
    }
  return !draft.snags.some((s) => s.code === 'formula.no-size');
}
