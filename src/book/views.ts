import { type LengthFormat, toMm } from '../measure/index.ts';
import { type Axis, doorsOf, type SetOut } from '../setting-out/index.ts';
import { type ChainPlace, chains, dimension, FIGURE, type Span } from './dimension.ts';
import { textBox } from './dimension-clashes.ts';
import { doorMarks } from './door-marks.ts';
import { drawerMarks } from './drawer-marks.ts';
import { type Dimension, type Drawing, moved } from './drawing.ts';
import { lengthsOf } from './lengths.ts';
import { clearSpans, clearStacks, overallSpan, profileSpans, type TracedSpan } from './measured-spans.ts';
import { bodiesOf } from './part-body.ts';
import { pictureMarks, type Sight, sightOf } from './picture.ts';
import { FROM_ABOVE, FROM_FRONT, FROM_RIGHT, type Looking } from './projection.ts';
import { slidingMarks } from './sliding-marks.ts';
import type { TextMeasure } from './text-measure.ts';

export type ViewName = 'front' | 'side' | 'plan';

/** A view with its dimensions, and where on its paper the picture itself lies (for lining views up). */
export interface View extends Drawing {
  readonly name: ViewName;
  readonly picture: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
}

interface ViewKind {
  readonly looking: Looking;
  readonly across: Axis;
  readonly hidden: boolean;
}

const KINDS: Readonly<Record<ViewName, ViewKind>> = {
  front: { looking: FROM_FRONT, across: 0, hidden: false },
  side: { looking: FROM_RIGHT, across: 1, hidden: true },
  plan: { looking: FROM_ABOVE, across: 0, hidden: true },
};

/**
 * A view of the piece, dimensioned: the overall size outermost, then the openings and the steps of the outline; the
 * clear heights stand inside their openings. `scale` is paper over piece.
 */
export function view(
  setOut: SetOut,
  name: ViewName,
  scale: number,
  format: LengthFormat,
  type: TextMeasure,
): View {
  const kind = KINDS[name];
  const lengths = lengthsOf(setOut.ledger, format);
  const sight = sightFrom(setOut, name);
  const { bounds } = sight;
  const extent = extentOf(setOut, name);
  const [width, height] = [extent.width * scale, extent.height * scale];
  const zero = [-bounds.left * scale, bounds.top * scale] as const;
  const picture = pictureMarks(sight, {
    scale,
    zero,
    showing: () => 'line',
    hidden: kind.hidden,
  });

  const span = (s: TracedSpan, to: (mm: number) => number): Span => ({
    from: to(toMm(s.from)),
    to: to(toMm(s.to)),
    words: lengths.bare(s.trace),
    trace: s.trace,
  });
  const onX = (s: TracedSpan) => span(s, (mm) => zero[0] + mm * scale);
  const onY = (s: TracedSpan) => span(s, (mm) => zero[1] - mm * scale);
  const below: ChainPlace = { axis: 'x', border: height, outward: 1, first: 8 };
  const left: ChainPlace = { axis: 'y', border: 0, outward: -1, first: 7, until: height + 2 };
  const outside = [
    ...chains(
      rowsBelow(setOut, name).map((row) => row.map(onX)),
      below,
      type,
    ),
    ...chains(
      rowsLeft(setOut, name).map((row) => row.map(onY)),
      left,
      type,
    ),
  ];
  const inside = name === 'front' ? clearHeights(setOut, onX, onY, type) : [];

  const figures = [...outside, ...inside].map((d) => textBox(d.label, type));
  const marksOfDoors =
    name === 'front'
      ? [doorMarks, slidingMarks, drawerMarks].flatMap((marks) => marks(setOut, scale, zero, figures))
      : [];
  const room = roomRound(outside, width, height, type);
  return {
    name,
    width: room.left + width + room.right,
    height: room.top + height + room.bottom,
    marks: moved([...picture, ...marksOfDoors, ...outside, ...inside], room.left, room.top),
    picture: { left: room.left, top: room.top, width, height },
  };
}

/** How wide and high the picture of a view is without its sizes, in millimetres of the piece. */
export function extentOf(
  setOut: SetOut,
  name: ViewName,
): { readonly width: number; readonly height: number } {
  const { left, right, bottom, top } = sightFrom(setOut, name).bounds;
  return { width: right - left, height: top - bottom };
}

const KEPT = new WeakMap<SetOut, Map<ViewName, Sight>>();

/** What a view shows, worked out once: the same at any scale. */
function sightFrom(setOut: SetOut, name: ViewName): Sight {
  const kept = KEPT.get(setOut) ?? new Map<ViewName, Sight>();
  KEPT.set(setOut, kept);
  // From the front doors are drawn as outlines, so that what is behind them can be seen.
  const doors = new Set(name === 'front' ? doorsOf(setOut) : []);
  const sight =
    kept.get(name) ??
    sightOf(
      bodiesOf(setOut).filter((b) => !doors.has(b.part)),
      KINDS[name].looking,
    );
  kept.set(name, sight);
  return sight;
}

function rowsBelow(setOut: SetOut, name: ViewName): TracedSpan[][] {
  const axis = KINDS[name].across;
  if (name === 'plan') return [[overallSpan(setOut, axis)]];
  const inner = name === 'front' ? clearSpans(setOut, 0) : [];
  return apart([...rowsOf(inner), profileSpans(setOut, axis, 2), [overallSpan(setOut, axis)]]);
}

function rowsLeft(setOut: SetOut, name: ViewName): TracedSpan[][] {
  if (name === 'plan') return apart([profileSpans(setOut, 1, 0), [overallSpan(setOut, 1)]]);
  if (name === 'side') return [[overallSpan(setOut, 2)]];
  return apart([profileSpans(setOut, 2, 0), [overallSpan(setOut, 2)]]);
}

/** Spans in as few rows as hold them without overlap: openings one above another may divide the width differently. */
function rowsOf(spans: readonly TracedSpan[]): TracedSpan[][] {
  const rows: TracedSpan[][] = [];
  for (const s of [...spans].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const row = rows.find((r) => r.every((o) => o.to <= s.from || o.from >= s.to));
    if (row) row.push(s);
    else rows.push([s]);
  }
  return rows;
}

/** Rows without a span that a later row shows as well. */
function apart(rows: readonly (readonly TracedSpan[])[]): TracedSpan[][] {
  const same = (a: TracedSpan, b: TracedSpan) => a.from === b.from && a.to === b.to;
  return rows.map((row, i) => row.filter((s) => !rows.slice(i + 1).some((r) => r.some((o) => same(o, s)))));
}

/**
 * The clear heights between bottom, shelves and top, one above the other, in every stack that differs from its
 * neighbour to the left. What is too low for a figure is left to the cutting list.
 */
function clearHeights(
  setOut: SetOut,
  onX: (s: TracedSpan) => Span,
  onY: (s: TracedSpan) => Span,
  type: TextMeasure,
): Dimension[] {
  const out: Dimension[] = [];
  let before = '';
  for (const stack of clearStacks(setOut)) {
    const x = onX(stack.across);
    const heights = stack.heights.map(onY);
    const series = heights.map((h) => `${h.words}@${Math.round(h.from * 100)}`).join(' ');
    if (series === before) continue;
    before = series;
    const at = x.from + Math.max(Math.min((x.to - x.from) * 0.3, 14), 5);
    if (at > x.to - 2) continue;
    for (const h of heights) {
      const [from, to] = [Math.min(h.from, h.to), Math.max(h.from, h.to)];
      const wide = type.width(h.words, FIGURE, 'regular');
      if (to - from >= wide + 2) out.push(dimension({ ...h, from, to }, 'y', at, { label: 'over' }));
      else if (to - from >= FIGURE && x.to - at >= wide + 2)
        out.push(dimension({ ...h, from, to }, 'y', at, { label: 'beside' }));
    }
  }
  return out;
}

/** How much paper the dimensions need on each side of a picture. */
function roomRound(dimensions: readonly Dimension[], width: number, height: number, type: TextMeasure) {
  const room = { left: 1, right: 1, top: 1, bottom: 1 };
  const need = (left: number, top: number, right: number, bottom: number) => {
    room.left = Math.max(room.left, 1 - left);
    room.top = Math.max(room.top, 1 - top);
    room.right = Math.max(room.right, right - width + 1);
    room.bottom = Math.max(room.bottom, bottom - height + 1);
  };
  for (const d of dimensions) {
    const box = textBox(d.label, type);
    need(box.left, box.top, box.right, box.bottom);
    for (const s of d.strokes) for (const p of [s.from, s.to]) need(p[0], p[1], p[0], p[1]);
  }
  return room;
}
