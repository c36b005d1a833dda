import type { JobDocument, Lot } from '../job/index.ts';
import { sagLimit, shelfLoad } from '../materials/index.ts';
import type { Cure, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { fieldThatNames } from './enough-material.ts';
import { type Bending, bend, type LoadedSurface, loadedSurface } from './loaded-surface.ts';
import { practice, ruleOf } from './rule.ts';
import { lengthMm, listed, ShopWords } from './shop-words.ts';

type Input = Pick<CheckInput, 'job' | 'setOut' | 'weigh'>;

/** What a surface is judged by: a share of its span, reached at once or after years. */
interface Measure {
  readonly code: string;
  readonly level: Snag['level'];
  readonly limit: NonNullable<ReturnType<typeof sagLimit>>;
  readonly sag: (b: Bending) => number;
  /** What the sag at once is multiplied with. */
  readonly factor: (b: Bending) => number;
}

const MEASURES: readonly Measure[] = [
  {
    code: 'sag.beyond-limit',
    level: 'stop',
    limit: sagLimit('standard')!,
    sag: (b) => b.sagMm,
    factor: () => 1,
  },
  {
    code: 'sag.seen',
    level: 'mind',
    limit: sagLimit('eye')!,
    sag: (b) => b.finalMm,
    factor: (b) => b.creep,
  },
];

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
  // Rounded before they are compared, so that every machine draws the line in the same place.
  const micrometres = (mm: number) => Math.round(mm * 1000);
  const missed = MEASURES.find((m) => micrometres(m.sag(bending)) > micrometres(s.spanMm / m.limit.over));
  if (!missed) return undefined;
  return {
    key: `${missed.code} ${micrometres(missed.sag(bending))}`,
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
    cures: curesFor(input, s, bending, measure),
  };
}

function curesFor(input: Input, s: LoadedSurface, bending: Bending, measure: Measure): readonly Cure[] {
  const words = new ShopWords(input.job);
  const cures: Cure[] = [];
  const thicker = thickerLot(input, s, measure);
  const at = fieldThatNames(input.job, s.part);
  if (thicker && at)
    cures.push({
      says: `Make it of “${thicker.lot.name}”, ${words.length(thicker.bending.thicknessMm)} thick: it would sag ${words.fine(measure.sag(thicker.bending))}.`,
      edits: [{ record: at.record, field: at.field, value: thicker.lot.id }],
    });
  cures.push(...shorterSpan(input.job, s, bending, measure));
  const kg = allowedKg(s, bending, measure);
  if (kg > 0) cures.push({ says: `Put no more than ${words.mass(kg)} on it.` });
  return cures;
}

/** A narrower opening keeps all of the load on it; an upright in the middle halves load and span together. */
function shorterSpan(
  job: JobDocument,
  s: LoadedSurface,
  bending: Bending,
  { limit, factor }: Measure,
): readonly Cure[] {
  const words = new ShopWords(job);
  const isOne = s.runMm <= s.spanMm + 1;
  const span = words.typedUpTo(bending.spanForMm(limit.over, factor(bending), isOne && !s.general));
  if (s.grain === 'across') return [{ says: `Support it at ${span} or less from front to back.` }];
  const halves = 2 * bending.spanForMm(limit.over, factor(bending), false) >= s.spanMm;
  const upright: Cure[] = halves ? [{ says: 'Put an upright in the middle of the span.' }] : [];
  const opening = fixedOpening(job, s);
  if (opening === undefined) return [...upright, { says: `Bring the span down to ${span} or less.` }];
  return [
    {
      says: `Make the opening ${span} wide, the longest span that would do.`,
      edits: [{ record: opening, field: 'size', value: span }],
    },
    ...upright,
  ];
}

/** The load that would just do: sag grows with the whole weight. Whole kilograms, rounded down. */
function allowedKg(s: LoadedSurface, bending: Bending, measure: Measure): number {
  const own = s.boardKg + s.edgingKg;
  const share = s.spanMm / measure.limit.over / measure.sag(bending);
  return Math.floor((s.loadKg + own) * share - own);
}

/** The thinnest lot of the rack that would do, of a sheet that is there or can be bought. */
function thickerLot(
  input: Input,
  s: LoadedSurface,
  measure: Measure,
): { readonly lot: Lot; readonly bending: Bending } | undefined {
  const { job, setOut } = input;
  const narrowest = Math.min(
    ...setOut.joints
      .filter((j) => j.duty === 'edging' && j.mate === s.part.id)
      .flatMap((j) => setOut.parts.filter((p) => p.id === j.part))
      .map((p) => lengthMm(job, lotOf(job, p.lot).width ?? '0 mm')),
  );
  const enough = job.shop.rack.lots
    .filter((lot) => lot.form === 'sheet' && lot.id !== s.part.lot)
    .filter((lot) => lot.stock.some((x) => (x.have ?? 0) > 0 || x.price !== undefined))
    .flatMap((lot) => {
      const bending = bend(input, s, lot);
      return bending ? [{ lot, bending }] : [];
    })
    .filter(
      ({ bending: b }) => measure.sag(b) <= s.spanMm / measure.limit.over && b.thicknessMm <= narrowest,
    );
  enough.sort((a, b) => a.bending.thicknessMm - b.bending.thicknessMm || (a.lot.id < b.lot.id ? -1 : 1));
  return enough[0];
}

/** The opening whose typed width is the span, where others beside it can take up what it loses. */
function fixedOpening(job: JobDocument, s: LoadedSurface): string | undefined {
  const records = job.design.records;
  const shelf = records.find((r) => r.id === s.surface.record);
  const opening = shelf?.kind === 'shelf' ? records.find((r) => r.id === shelf.parent) : undefined;
  if (opening?.kind !== 'opening' || !isFixed(opening.size)) return undefined;
  const split = records.find((r) => r.id === opening.parent);
  if (split?.kind !== 'opening' || split.split !== 'across') return undefined;
  const beside = records.filter((r) => r.kind === 'opening' && r.parent === split.id);
  return beside.some((r) => r.kind === 'opening' && !isFixed(r.size)) ? opening.id : undefined;
}

function isFixed(size: string | undefined): boolean {
  return size !== undefined && size.trim() !== 'equal' && !/shares?$/.test(size.trim());
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

function lotOf(job: JobDocument, id: string): Lot {
  const lot = job.shop.rack.lots.find((l) => l.id === id);
  if (!lot) throw new Error(`unchecked lot: ${id}`);
  return lot;
}
