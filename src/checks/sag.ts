import type { Lot } from '../job/index.ts';
import { shelfLoad } from '../materials/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { type Bending, bend, type LoadedSurface, loadedSurface, lotOf } from './loaded-surface.ts';
import { practice, ruleOf } from './rule.ts';
import { sagCures } from './sag-cures.ts';
import { keepsTo, MEASURES, type Measure } from './sag-measures.ts';
import { listed, ShopWords } from './shop-words.ts';

type Input = Pick<CheckInput, 'job' | 'setOut' | 'weigh'>;

/**
 * How far every shelf, bottom and top sags under its load and its own weight: at once by the standard for shelves,
 * and after years (EN 1995-1-1 creep, a heated room) by what the eye notices. Surfaces that are alike share a snag.
 */
export function sag(input: Input): readonly Snag[] {
  const found = new Map<
    string,
    { readonly snag: (marks: readonly string[]) => Snag; readonly marks: string[] }
  >();
  for (const surface of input.setOut.surfaces) {
    const loaded = loadedSurface(input, surface);
    const one = judge(input, loaded);
    if (!one) continue;
    const key = `${surface.record} ${one.key}`;
    const alike = found.get(key);
    if (alike) alike.marks.push(loaded.part.mark);
    else found.set(key, { snag: one.snag, marks: [loaded.part.mark] });
  }
  return [...found.values()].map(({ snag, marks }) => snag(marks));
}

function judge(
  input: Input,
  s: LoadedSurface,
): { readonly key: string; readonly snag: (marks: readonly string[]) => Snag } | undefined {
  const lot = lotOf(input.job, s.part.lot);
  const bending = bend(input, s, lot);
  if (!bending) return { key: `unknown ${lot.id}`, snag: (marks) => unknown(s, lot, marks) };
  const missed = MEASURES.find((m) => !keepsTo(m, s, bending));
  if (!missed) return undefined;
  return {
    key: `${missed.code} ${missed.sag(bending).toFixed(3)}`,
    snag: (marks) => tooMuch(input, s, bending, missed, marks),
  };
}

function tooMuch(
  input: Input,
  s: LoadedSurface,
  bending: Bending,
  measure: Measure,
  marks: readonly string[],
): Snag {
  const words = new ShopWords(input.job);
  const limitMm = s.spanMm / measure.limit.over;
  const load = s.general
    ? `general shelving (${words.mass(s.loadKg)} on it, since no load is stated)`
    : `${words.mass(s.loadKg)}${s.runMm > s.spanMm + 1 ? ' spread over all of it' : ''}`;
  const then = `${words.fine(bending.sagMm)} at once and ${words.fine(bending.finalMm)} after years`;
  const general = s.general ? ` Load: ${shelfLoad('general')!.says} (${shelfLoad('general')!.source}).` : '';
  return {
    code: measure.code,
    level: measure.level,
    where: { path: `design/records/${s.surface.record}`, record: s.surface.record, part: s.part.id },
    sentence: `${named(s, marks)} would sag ${then} under ${load}, over a span of ${words.length(s.spanMm)}; ${words.fine(limitMm)} (1/${measure.limit.over}) is the limit. Its ends are reckoned as only resting.${general}`,
    figures: words.atMost(measure.sag(bending), limitMm),
    rule: ruleOf(measure.limit),
    cures: sagCures(input, s, bending, measure),
  };
}

function unknown(s: LoadedSurface, lot: Lot, marks: readonly string[]): Snag {
  const across = s.grain !== 'along';
  return {
    code: 'sag.stiffness-unknown',
    level: 'note',
    where: {
      path: `shop/rack/lots/${lot.id}/material`,
      record: s.surface.record,
      part: s.part.id,
      lot: lot.id,
    },
    sentence: `How far ${named(s, marks)} would sag was not reckoned: no stiffness ${across ? 'across the grain ' : ''}is known for “${lot.name}”.`,
    rule: practice('no figure is better than a guessed one'),
    cures: [
      {
        says: across
          ? 'Let the grain run along the span, or try the board under its load before you trust it.'
          : 'Name a material that is in the tables, or try the board under its load before you trust it.',
      },
    ],
  };
}

function named(s: LoadedSurface, marks: readonly string[]): string {
  return marks.length === 1 ? `${s.part.mark}, the ${s.part.name},` : `Each of ${listed(marks)}`;
}
