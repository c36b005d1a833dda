import type { JobDocument, Lot } from '../job/index.ts';
import type { Cure, CureEdit } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { type Bending, bend, type LoadedSurface, loadedSurface, lotOf } from './loaded-surface.ts';
import { fieldThatNames } from './lot-field.ts';
import { keepsTo, type Measure } from './sag-measures.ts';
import { lengthMm, ShopWords } from './shop-words.ts';
import { tryEdits } from './try-edits.ts';

type Input = Pick<CheckInput, 'job' | 'setOut' | 'weigh'>;

/** What would make a surface keep to a measure: a thicker board, a shorter span, less on it. */
export function sagCures(
  input: Input,
  s: LoadedSurface,
  bending: Bending,
  measure: Measure,
): readonly Cure[] {
  const words = new ShopWords(input.job);
  const offered: Cure[] = [];
  offered.push(...thickerBoard(input, s, measure));
  offered.push(...shorterSpan(input, s, bending, measure));
  const kg = allowedKg(s, bending, measure);
  if (kg > 0) offered.push({ says: `Put no more than ${words.mass(kg)} on it.` });
  return offered;
}

/** A narrower opening keeps all of the load on it; an upright in the middle halves load and span together. */
function shorterSpan(input: Input, s: LoadedSurface, bending: Bending, measure: Measure): readonly Cure[] {
  const { job } = input;
  const { limit, factor } = measure;
  const words = new ShopWords(job);
  const isOne = s.runMm <= s.spanMm + 1;
  const span = words.typedUpTo(bending.spanForMm(limit.over, factor(bending), isOne && !s.general));
  if (s.grain === 'across') return [{ says: `Support it at ${span} or less from front to back.` }];
  const halves = 2 * bending.spanForMm(limit.over, factor(bending), false) >= s.spanMm;
  const upright: Cure[] = halves ? [{ says: 'Put an upright in the middle of the span.' }] : [];
  const opening = fixedOpening(job, s);
  const edits = opening === undefined ? [] : [{ record: opening, field: 'size', value: span }];
  if (opening === undefined || !cures(input, s, measure, edits))
    return [...upright, { says: `Bring the span down to ${span} or less.` }];
  return [
    {
      says: `Make the opening ${span} wide, the longest span that would do.`,
      edits,
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

/** The thinnest board with which the piece can still be set out; failing that the thinnest, without an edit. */
function thickerBoard(input: Input, s: LoadedSurface, measure: Measure): readonly Cure[] {
  const { job } = input;
  const words = new ShopWords(job);
  const says = ({ lot, bending }: { readonly lot: Lot; readonly bending: Bending }) =>
    `Make it of “${lot.name}”, ${words.length(bending.thicknessMm)} thick: it would sag ${words.fine(measure.sag(bending))}`;
  const boards = boardsThatDo(input, s, measure);
  const at = fieldThatNames(job, s.part);
  for (const board of at ? boards : []) {
    const edits = [{ record: at!.record, field: at!.field, value: board.lot.id }];
    if (cures(input, s, measure, edits)) return [{ says: `${says(board)}.`, edits }];
  }
  const first = boards[0];
  return first ? [{ says: `${says(first)}. Other sizes and screws must then follow.` }] : [];
}

/** Whether edits leave a piece that can be set out, in which the same part keeps to the measure. */
function cures(input: Input, s: LoadedSurface, measure: Measure, edits: readonly CureEdit[]): boolean {
  const after = tryEdits(input.job, input.setOut, edits);
  const surface = after?.setOut.surfaces.find((x) => x.part === s.part.id);
  if (!after || !surface) return false;
  const loaded = loadedSurface(after, surface);
  const bending = bend(after, loaded, lotOf(after.job, loaded.part.lot));
  return bending !== undefined && keepsTo(measure, loaded, bending);
}

/** The boards of the rack that would do, the thinnest first, of sheets that are there or can be bought. */
function boardsThatDo(
  input: Input,
  s: LoadedSurface,
  measure: Measure,
): readonly { readonly lot: Lot; readonly bending: Bending }[] {
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
  return enough;
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
