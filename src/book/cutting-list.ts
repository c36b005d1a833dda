import type { BuildPlan } from '../build/index.ts';
import type { Traced } from '../measure/index.ts';
import {
  blankOf,
  commonName,
  type Feature,
  groupParts,
  joinMarks,
  type Part,
  partsAndBoards,
  type SetOut,
} from '../setting-out/index.ts';

import type { BookBreakdown } from './book-input.ts';
import { piecesUnder } from './cut-order.ts';

/** A line of the cutting list: parts that are cut alike. */
export interface CuttingRow {
  /** `D1–D3`. */
  readonly marks: string;
  readonly name: string;
  readonly count: number;
  /** Sizes to cut to. */
  readonly length: Traced;
  readonly width: Traced;
  readonly thickness: Traced;
  readonly lot: string;
  readonly grain: 'along the length' | 'either way';
  readonly notes: string;
}

/**
 * The parts, equal ones together, in the order of their marks. Sizes are those that are sawn: on the saw's grid where
 * the breakdown has placed the part, else as set out.
 */
export function cuttingList(
  setOut: SetOut,
  breakdown: BookBreakdown,
  build: Pick<BuildPlan, 'stock'>,
): CuttingRow[] {
  const parted = new Set(setOut.joinedBlanks.flatMap((b) => b.parts));
  const sawn = new Map(
    breakdown.lots.flatMap((l) =>
      l.sheets.flatMap((s) => piecesUnder(s.root).map((p) => [p.part.id, p.size])),
    ),
  );
  const ready = new Set(build.stock.map((w) => w.name));
  const goneInto = usedUp(setOut, ready);
  return groupParts({ ...setOut, parts: partsAndBoards(setOut) }).map(({ parts, marks }) => {
    const first = parts[0]!;
    const size = { ...(first.rough ?? first), ...(parted.has(first.id) ? first.cut : sawn.get(first.id)) };
    return {
      marks,
      name: parts.length === 1 ? first.name : commonName(parts),
      count: parts.length,
      length: size.length,
      width: size.width,
      thickness: size.thickness,
      lot: first.lot,
      grain: first.grain === 'length' ? 'along the length' : 'either way',
      notes: [
        ...madeOf(setOut, parts),
        ...cutAlready(parts, ready),
        ...goneInto(first),
        ...notesOf(first),
      ].join('; '),
    };
  });
}

/** What parts alike are glued up or parted from, each from its own. */
function madeOf(setOut: SetOut, parts: readonly Part[]): string[] {
  const from = parts.flatMap((p): (readonly [mark: string, how: string, of: string])[] => {
    const glued = setOut.gluedPanels.find((g) => g.panel === p.id);
    if (glued) return [[p.mark, 'glued up from', joinMarks(glued.boards.map((b) => b.mark))]];
    const blank = blankOf(setOut, p.id);
    return blank ? [[p.mark, 'parted from', blank.mark]] : [];
  });
  const one = parts.length === 1;
  const [first] = from;
  if (first && !one && from.length === parts.length && from.every((f) => f[2] === first[2]))
    return [`both ${first[1]} ${first[2]}`];
  return from.map(([mark, how, of]) => (one ? `${how} ${of}` : `${mark} ${how} ${of}`));
}

/** What a board or a blank went into, where that is made already. */
function usedUp(
  { parts, gluedPanels, cleats, joinedBlanks }: SetOut,
  ready: ReadonlySet<string>,
): (p: Part) => string[] {
  const there = (id: string) => {
    const mark = parts.find((p) => p.id === id)?.mark;
    return mark !== undefined && ready.has(mark);
  };
  const gone = new Map([
    ...gluedPanels
      .filter((g) => there(g.panel))
      .flatMap((g) => g.boards.map((b) => [b.id, 'glued up already'] as const)),
    ...cleats
      .filter((c) => there(c.onCase) && there(c.onWall))
      .map((c) => [c.blank.id, 'parted already'] as const),
    ...joinedBlanks.filter((b) => b.parts.some(there)).map((b) => [b.blank.id, 'parted already'] as const),
  ]);
  return ({ id }) => {
    const how = gone.get(id);
    return how === undefined ? [] : [how];
  };
}

/** What lies ready under its mark from an earlier day. */
function cutAlready(parts: readonly Part[], ready: ReadonlySet<string>): string[] {
  const made = parts.filter((p) => ready.has(p.mark));
  if (made.length === 0) return [];
  return [made.length === parts.length ? 'cut already' : `${joinMarks(made.map((p) => p.mark))} cut already`];
}

/** What is worked on a part, in a few words each. */
function notesOf(part: Part): string[] {
  const notes: string[] = part.joins
    ? [`parted into ${part.joins.map((j) => j.mark).join(' and ')} after its work`]
    : [];
  const count = (kind: Feature['kind']) => part.features.filter((f) => f.kind === kind).length;
  for (const f of part.features) if (f.kind === 'rabbet') notes.push(`rabbet ${f.purpose}`);
  const channels = part.features.filter((f) => f.kind === 'groove');
  const dados = channels.filter((f) => f.edge === 'start' || f.edge === 'end').length;
  if (dados > 0) notes.push(`${dados} ${dados === 1 ? 'dado' : 'dados'}`);
  if (channels.length > dados) notes.push(`${channels.length - dados === 1 ? 'groove' : 'grooves'} along`);
  if (count('notch') > 0) notes.push(`${count('notch')} ${count('notch') === 1 ? 'notch' : 'notches'}`);
  const bevels = part.features.filter((f) => f.kind === 'bevel');
  if (bevels.length > 0) {
    const angles = [...new Set(bevels.map((b) => `${b.angle}°`))].join(', ');
    notes.push(
      `${bevels.some((b) => b.edge === 'near' || b.edge === 'far') ? 'one edge' : bevels.length === 2 ? 'both ends' : 'one end'} at ${angles}`,
    );
  }
  if (count('pocket') > 0) notes.push(`${count('pocket')} pocket holes`);
  if (count('hole') > 0) notes.push(`${count('hole')} ${count('hole') === 1 ? 'hole' : 'holes'}`);
  if (count('biscuit-slot') > 0) notes.push(`${count('biscuit-slot')} slots for biscuits`);
  if (count('spline-groove') > 0)
    notes.push(
      `${count('spline-groove')} ${count('spline-groove') === 1 ? 'groove for a spline' : 'grooves for splines'}`,
    );
  if (count('slot') > 0) notes.push(`${count('slot')} ${count('slot') === 1 ? 'slot' : 'slots'}`);
  if (part.rough) notes.push('trimmed later');
  return [...new Set(notes)];
}
