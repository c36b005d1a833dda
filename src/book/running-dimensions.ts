import type { Traced } from '../measure/index.ts';
import { type Dimension, type Line, line, type PaperPoint, text } from './drawing.ts';

/** A place to be marked: where it lies on paper along its axis, and its distance from the reference in words. */
export interface RunningPlace {
  readonly at: number;
  readonly words: string;
  readonly trace: Traced;
}

const STEP = 3.7;
const TYPE = 2.9;
const FOOT = 0.8;
const STRAIGHT = 2;
const ELBOW = 5;

/**
 * Distances that all run from one edge, as they are read off a tape: a line from each place to its figure, figures
 * spread where places lie close. `zero` is where the tape begins.
 */
export function runningDimensions(
  places: readonly RunningPlace[],
  axis: 'x' | 'y',
  border: number,
  outward: 1 | -1,
): Dimension[] {
  const order = [...places].sort((a, b) => a.at - b.at);
  const spots = spread(order.map((p) => p.at));
  const point = (along: number, across: number): PaperPoint =>
    axis === 'x' ? [along, across] : [across, along];
  return order.map((p, i): Dimension => {
    const spot = spots[i]!;
    const strokes: Line[] = [
      line(point(p.at, border + outward * FOOT), point(p.at, border + outward * STRAIGHT), 'fine', 'measure'),
      line(
        point(p.at, border + outward * STRAIGHT),
        point(spot, border + outward * ELBOW),
        'fine',
        'measure',
      ),
    ];
    const far = border + outward * (ELBOW + 0.8);
    const label =
      axis === 'x'
        ? text([spot + TYPE * 0.35, far], p.words, TYPE, {
            upright: true,
            anchor: outward > 0 ? 'end' : 'start',
            tone: 'measure',
          })
        : text([far, spot + TYPE * 0.35], p.words, TYPE, {
            anchor: outward > 0 ? 'start' : 'end',
            tone: 'measure',
          });
    return { kind: 'dimension', trace: p.trace, strokes, label };
  });
}

/** Places moved apart to at least a step, as little as can be: groups that touch share the push evenly. */
function spread(places: readonly number[]): number[] {
  const groups: { at: number[]; start: number }[] = [];
  for (const p of places) {
    groups.push({ at: [p], start: p });
    for (;;) {
      const b = groups[groups.length - 1]!;
      const a = groups[groups.length - 2];
      if (!a || a.start + a.at.length * STEP <= b.start + 1e-9) break;
      const at = [...a.at, ...b.at];
      const mean = at.reduce((s, v, i) => s + v - i * STEP, 0) / at.length;
      groups.splice(-2, 2, { at, start: mean });
    }
  }
  return groups.flatMap((g) => g.at.map((_, i) => g.start + i * STEP));
}
