import { type LengthFormat, toMm } from '../measure/index.ts';
import { type Axis, boxTicks, type SetOut } from '../setting-out/index.ts';
import { type ChainPlace, chains, dimension, FIGURE, type Span } from './dimension.ts';
import { textBox } from './dimension-clashes.ts';
import { type Dimension, type Drawing, moved } from './drawing.ts';
import { lengthsOf } from './lengths.ts';
import {
  clearSpans,
  distinctSpans,
  innermostOpenings,
  overallSpan,
  profileSpans,
  type TracedSpan,
} from './measured-spans.ts';
import { partBody } from './part-body.ts';
import { pictureBounds, pictureMarks } from './picture.ts';
import { FROM_ABOVE, FROM_FRONT, FROM_RIGHT, type Looking } from './projection.ts';
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
  const bodies = setOut.parts.map((p) => partBody(setOut.ledger, p));
  const bounds = pictureBounds(bodies, kind.looking);
  const width = (bounds.right - bounds.left) * scale;
  const height = (bounds.top - bounds.bottom) * scale;
  const zero = [-bounds.left * scale, bounds.top * scale] as const;
  const picture = pictureMarks(bodies, kind.looking, {
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
  const left: ChainPlace = { axis: 'y', border: 0, outward: -1, first: 7 };
  const outside = [
    ...chains(spansBelow(setOut, name).map(onX), below, type),
    ...chains(spansLeft(setOut, name).map(onY), left, type),
  ];
  const inside = name === 'front' ? clearHeights(setOut, onX, onY, type) : [];

  const room = roomRound(outside, width, height, type);
  return {
    name,
    width: room.left + width + room.right,
    height: room.top + height + room.bottom,
    marks: moved([...picture, ...outside, ...inside], room.left, room.top),
    picture: { left: room.left, top: room.top, width, height },
  };
}

function spansBelow(setOut: SetOut, name: ViewName): TracedSpan[] {
  const axis = KINDS[name].across;
  if (name === 'plan') return [overallSpan(setOut, axis)];
  const inner = name === 'front' ? clearSpans(setOut, 0) : [];
  return distinctSpans([...inner, ...profileSpans(setOut, axis, 2), overallSpan(setOut, axis)]);
}

function spansLeft(setOut: SetOut, name: ViewName): TracedSpan[] {
  if (name === 'plan') return distinctSpans([...profileSpans(setOut, 1, 0), overallSpan(setOut, 1)]);
  if (name === 'side') return [overallSpan(setOut, 2)];
  return distinctSpans([...profileSpans(setOut, 2, 0), overallSpan(setOut, 2)]);
}

/**
 * The clear heights of the openings, one above the other, in every stack of openings that differs from its
 * neighbour to the left. What is too low for a figure is left to the cutting list.
 */
function clearHeights(
  setOut: SetOut,
  onX: (s: TracedSpan) => Span,
  onY: (s: TracedSpan) => Span,
  type: TextMeasure,
): Dimension[] {
  const stacks = new Map<string, { readonly x: Span; readonly heights: Span[] }>();
  for (const o of innermostOpenings(setOut)) {
    const box = boxTicks(setOut.ledger, o.box);
    const x = onX({ from: box.min[0], to: box.max[0], trace: o.width });
    const key = `${box.min[0]} ${box.max[0]}`;
    const stack = stacks.get(key) ?? { x, heights: [] };
    stack.heights.push(onY({ from: box.min[2], to: box.max[2], trace: o.height }));
    stacks.set(key, stack);
  }
  const out: Dimension[] = [];
  let before = '';
  for (const { x, heights } of [...stacks.values()].sort((a, b) => a.x.from - b.x.from)) {
    const series = heights.map((h) => `${h.words}@${Math.round(h.from * 100)}`).join(' ');
    if (series === before) continue;
    before = series;
    const at = x.from + Math.min((x.to - x.from) * 0.3, 14);
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
