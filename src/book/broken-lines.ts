import { textBox } from './dimension-clashes.ts';
import type { Dimension, Line, PaperPoint } from './drawing.ts';
import type { TextMeasure } from './text-measure.ts';

/** Room left round a figure where a line is broken for it. */
const ROOM = 0.5;

/** Dimensions whose extension lines are broken where they would run through a figure. */
export function brokenAtFigures(dimensions: readonly Dimension[], type: TextMeasure): Dimension[] {
  const boxes = dimensions.map((d) => textBox(d.label, type));
  return dimensions.map((d) => ({
    ...d,
    strokes: d.strokes.flatMap((stroke) => {
      let lines: Line[] = [stroke];
      for (const box of boxes) lines = lines.flatMap((l) => around(l, box));
      return lines;
    }),
  }));
}

/** What is left of a level or upright line outside of a box. */
function around(l: Line, box: ReturnType<typeof textBox>): Line[] {
  const upright = l.from[0] === l.to[0];
  if (!upright && l.from[1] !== l.to[1]) return [l];
  const [across, low, high] = upright
    ? [l.from[0], box.top - ROOM, box.bottom + ROOM]
    : [l.from[1], box.left - ROOM, box.right + ROOM];
  const [left, right] = upright ? [box.left, box.right] : [box.top, box.bottom];
  if (across <= left || across >= right) return [l];
  const [from, to] = upright ? [l.from[1], l.to[1]] : [l.from[0], l.to[0]];
  const point = (t: number): PaperPoint => (upright ? [across, t] : [t, across]);
  const [start, end] = [Math.min(from, to), Math.max(from, to)];
  if (end <= low || start >= high) return [l];
  const pieces: Line[] = [];
  if (start < low) pieces.push({ ...l, from: point(start), to: point(low) });
  if (end > high) pieces.push({ ...l, from: point(high), to: point(end) });
  return pieces;
}
