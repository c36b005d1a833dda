import type { Traced } from '../measure/index.ts';
import { type Dimension, type Line, line, type PaperPoint, text } from './drawing.ts';
import type { TextMeasure } from './text-measure.ts';

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
}

/** Height of the figures on drawings, and the step from one dimension line to the next. */
export const FIGURE = 3.1;
export const CHAIN_STEP = 7;

/** Where a figure stands: over its line, beyond an end of it, or to the right of an upright line. */
type Label = 'over' | 'before' | 'after' | 'beside';

const GAP = 0.9;
const BEYOND = 1.3;
const END = 0.95;

/**
 * Lays out dimension chains beside a view. Short spans lie next to the view, longer ones farther out, none across
 * another. A figure stands over the middle of its line, aside from extension lines that pass; where it doesn't fit
 * it moves out beyond the end of its span, and then no other span of that line may begin there.
 */
export function chains(spans: readonly Span[], place: ChainPlace, type: TextMeasure): Dimension[] {
  const order = spans
    .map((s) => (s.from <= s.to ? s : { ...s, from: s.to, to: s.from }))
    .sort((a, b) => a.to - a.from - (b.to - b.from) || a.from - b.from);
  const set: Placed[] = [];
  order.forEach((span, i) => {
    const wide = type.width(span.words, FIGURE, 'regular') + 1.2;
    const passing = order.slice(i + 1).flatMap((s) => [s.from, s.to]);
    const rooms: Room[] =
      wide <= span.to - span.from
        ? [{ label: 'over', from: span.from, to: span.to, figure: clearMiddle(span, wide, passing) }]
        : [
            { label: 'before', from: span.from - wide, to: span.to },
            { label: 'after', from: span.from, to: span.to + wide },
          ];
    const rated = rooms.map((room) => {
      const under = set.filter((o) => o.room.from < room.to - 0.05 && o.room.to > room.from + 0.05);
      const crossed = passing.filter((p) => p > room.from + 0.3 && p < room.to - 0.3);
      const level = under.reduce((m, o) => Math.max(m, o.level + 1), 0);
      return { room, level, cost: level + (room.label === 'over' ? 0 : crossed.length) };
    });
    const best = rated.reduce((m, r) => (r.cost < m.cost ? r : m));
    set.push({ span, room: best.room, level: best.level });
  });
  return set.map(({ span, room, level }) => {
    const at = place.border + place.outward * (place.first + level * CHAIN_STEP);
    const foot = place.border + place.outward * GAP;
    const middle = room.figure === undefined ? {} : { middle: room.figure };
    return dimension(span, place.axis, at, { foot, label: room.label, ...middle });
  });
}

interface Room {
  readonly label: 'over' | 'before' | 'after';
  readonly from: number;
  readonly to: number;
  readonly figure?: number;
}

interface Placed {
  readonly span: Span;
  readonly room: Room;
  readonly level: number;
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
  if (label === 'beside') return text([at + 1.2, middle + FIGURE * 0.35], words, FIGURE, look);
  if (axis === 'x') {
    const lift = at - 0.9;
    if (label === 'over') return text([middle, lift], words, FIGURE, { ...look, anchor: 'middle' });
    if (label === 'before') return text([from - 1, lift], words, FIGURE, { ...look, anchor: 'end' });
    return text([to + 1, lift], words, FIGURE, look);
  }
  const left = at - 0.9;
  const turned = { ...look, upright: true } as const;
  if (label === 'over') return text([left, middle], words, FIGURE, { ...turned, anchor: 'middle' });
  if (label === 'before') return text([left, from - 1], words, FIGURE, { ...turned, anchor: 'start' });
  return text([left, to + 1], words, FIGURE, { ...turned, anchor: 'end' });
}
