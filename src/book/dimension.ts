import type { Traced } from '../measure/index.ts';
import { brokenAtFigures } from './broken-lines.ts';
import { type Dimension, type Line, line, type PaperPoint, text } from './drawing.ts';
import { CAP, type TextMeasure } from './text-measure.ts';

/** A length to be dimensioned: where it begins and ends along its axis on paper, and what is written. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly words: string;
  readonly trace: Traced;
}

/** Where dimension lines are drawn: along x below or above a view, or along y to its left or right. */
export interface ChainPlace {
  readonly axis: 'x' | 'y';
  /** The view's border, from which chains are stacked outward. */
  readonly border: number;
  /** 1 stacks toward larger paper coordinates (down, right), -1 toward smaller ones. */
  readonly outward: 1 | -1;
  /** From the border to the first line. */
  readonly first: number;
  /** Along the axis, what lies beyond belongs to another chain. */
  readonly until?: number;
}

/** Height of the figures on drawings, and the step from one dimension line to the next. */
export const FIGURE = 3.1;
const CHAIN_STEP = 7;

/** Where a figure stands: over or under its line, beyond an end of it, or to the right of an upright line. */
type Label = 'over' | 'under' | 'before' | 'after' | 'beside';

const GAP = 0.9;
const BEYOND = 1.3;
/** From a dimension line to its figure. */
const LIFT = 1.1;
const END = 0.95;
/** So many equal figures that find no room are too many to have a line each. */
const MANY = 3;

/**
 * Lays out dimensions beside a view. A row is a chain of spans that share one line; rows of short spans lie next to
 * the view, longer ones farther out. A figure stands over the middle of its line, aside from extension lines that
 * pass; where it doesn't fit it moves beyond an end of its span or under the line, where it is in nobody's way.
 */
export function chains(
  rows: readonly (readonly Span[])[],
  place: ChainPlace,
  type: TextMeasure,
): Dimension[] {
  const waiting = rows
    .map((row) => row.map(forward).sort((a, b) => a.from - b.from))
    .filter((row) => row.length > 0)
    .sort((a, b) => Math.max(...a.map(length)) - Math.max(...b.map(length)));
  const out: Dimension[] = [];
  for (let level = 0; waiting.length > 0; level++) {
    const row = waiting.shift()!;
    const passing = waiting.flatMap((r) => r.flatMap((s) => [s.from, s.to]));
    const { placed, crowded } = layRow(row, passing, place.until ?? Infinity, type);
    // What finds no clear place in its row gets a line of its own, next to it.
    if (crowded.length > 0) waiting.unshift(withoutMany(crowded));
    const at = place.border + place.outward * (place.first + level * CHAIN_STEP);
    const foot = place.border + place.outward * GAP;
    for (const [s, look] of placed) out.push(dimension(s, place.axis, at, { foot, ...look }));
  }
  return brokenAtFigures(out, type);
}

/** Where the figures of a row go, and which spans have no room for theirs. */
function layRow(row: readonly Span[], passing: readonly number[], until: number, type: TextMeasure) {
  const taken: [number, number][] = [];
  const under: [number, number][] = [];
  const placed = new Map<Span, { readonly label: Label; readonly middle?: number }>();
  const crowded: Span[] = [];
  const wide = (s: Span) => type.width(s.words, FIGURE, 'regular') + 1.2;
  for (const s of row.filter((r) => wide(r) <= length(r))) {
    const middle = clearMiddle(s, wide(s), passing);
    taken.push([middle - wide(s) / 2, middle + wide(s) / 2]);
    placed.set(s, { label: 'over', middle });
  }
  const ends = row.flatMap((o) => [o.from, o.to]);
  for (const s of row.filter((r) => wide(r) > length(r))) {
    const middle = (s.from + s.to) / 2;
    const half = wide(s) / 2;
    const sides = [
      { label: 'before', from: s.from - wide(s), to: s.from, beside: taken, lines: [...passing, ...ends] },
      { label: 'after', from: s.to, to: s.to + wide(s), beside: taken, lines: [...passing, ...ends] },
      { label: 'under', from: middle - half, to: middle + half, beside: under, lines: passing },
    ] as const;
    const inTheWay = (r: (typeof sides)[number]) =>
      (r.to > until ? 10 : 0) +
      r.beside.filter(([a, b]) => a < r.to && b > r.from).length * 10 +
      r.lines.filter((p) => p > r.from + 0.1 && p < r.to - 0.1).length;
    const best = sides.reduce<(typeof sides)[number]>(
      (m, r) => (inTheWay(r) < inTheWay(m) ? r : m),
      sides[0],
    );
    if (inTheWay(best) > 0 && row.length > 1 && crowded.length < row.length - 1) {
      crowded.push(s);
      continue;
    }
    best.beside.push([best.from, best.to]);
    placed.set(s, { label: best.label });
  }
  return { placed, crowded };
}

/** Of many equal stretches one tells for all: a row of cases would fill the page with lines. */
function withoutMany(spans: readonly Span[]): Span[] {
  const alike = (s: Span) => spans.filter((o) => o.words === s.words);
  return spans.filter((s) => alike(s).length < MANY || alike(s)[0] === s);
}

function length(s: Span): number {
  return s.to - s.from;
}

function forward(s: Span): Span {
  return s.from <= s.to ? s : { ...s, from: s.to, to: s.from };
}

/** The place nearest the middle of a span where a figure is clear of the lines that pass through the span. */
function clearMiddle(span: Span, wide: number, passing: readonly number[]): number {
  const middle = (span.from + span.to) / 2;
  const clear = (m: number) =>
    m - wide / 2 >= span.from - 1e-6 &&
    m + wide / 2 <= span.to + 1e-6 &&
    passing.every((p) => p <= m - wide / 2 || p >= m + wide / 2);
  const aside = passing.flatMap((p) => [p - wide / 2, p + wide / 2]);
  const places = [middle, ...aside.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b)];
  return places.find(clear) ?? middle;
}

/**
 * One dimension. `at` is the coordinate of its line across the axis; `foot` is where the extension lines start, or
 * absent when the line itself runs from face to face.
 */
export function dimension(
  span: Span,
  axis: 'x' | 'y',
  at: number,
  look: { readonly foot?: number; readonly label: Label; readonly middle?: number },
): Dimension {
  const p = (along: number, across: number): PaperPoint => (axis === 'x' ? [along, across] : [across, along]);
  const { from, to } = span;
  const strokes: Line[] = [];
  const measure = (a: PaperPoint, b: PaperPoint) => strokes.push(line(a, b, 'fine', 'measure'));
  if (look.foot !== undefined)
    for (const e of [from, to]) measure(p(e, look.foot), p(e, at + Math.sign(at - look.foot) * BEYOND));
  const outside = look.label === 'before' || look.label === 'after';
  const reach = outside ? BEYOND : 0;
  measure(p(from - reach, at), p(to + reach, at));
  for (const e of [from, to])
    strokes.push(
      axis === 'x'
        ? line([e - END, at + END], [e + END, at - END], 'thin', 'measure')
        : line([at - END, e + END], [at + END, e - END], 'thin', 'measure'),
    );
  return {
    kind: 'dimension',
    trace: span.trace,
    strokes,
    label: figure(span, axis, at, look.label, look.middle),
  };
}

function figure(span: Span, axis: 'x' | 'y', at: number, label: Label, shifted?: number) {
  const { from, to, words } = span;
  const look = { tone: 'measure' } as const;
  const middle = shifted ?? (from + to) / 2;
  const drop = at + LIFT + FIGURE * CAP;
  if (label === 'under')
    return axis === 'x'
      ? text([middle, drop], words, FIGURE, { ...look, anchor: 'middle' })
      : text([drop, middle], words, FIGURE, { ...look, anchor: 'middle', upright: true });
  if (label === 'beside') return text([at + 1.2, middle + FIGURE * 0.35], words, FIGURE, look);
  if (axis === 'x') {
    const lift = at - LIFT;
    if (label === 'over') return text([middle, lift], words, FIGURE, { ...look, anchor: 'middle' });
    if (label === 'before') return text([from - 1, lift], words, FIGURE, { ...look, anchor: 'end' });
    return text([to + 1, lift], words, FIGURE, look);
  }
  const left = at - LIFT;
  const turned = { ...look, upright: true } as const;
  if (label === 'over') return text([left, middle], words, FIGURE, { ...turned, anchor: 'middle' });
  if (label === 'before') return text([left, from - 1], words, FIGURE, { ...turned, anchor: 'start' });
  return text([left, to + 1], words, FIGURE, { ...turned, anchor: 'end' });
}
