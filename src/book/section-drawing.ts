import type { Traced } from '../measure/index.ts';
import { dimension } from './dimension.ts';
import { type Drawing, type Mark, moved, type PaperPoint, text } from './drawing.ts';
import type { Lengths } from './lengths.ts';

const LONG = 26;
const THICK = 11;

/** The end of a board cut through: a step in from its edge, with the step's width and depth. Not to scale. */
export function rabbetSection(width: Traced, depth: Traced, lengths: Lengths): Drawing {
  const [w, d] = [9, 5];
  const points: PaperPoint[] = [
    [0, 0],
    [LONG - w, 0],
    [LONG - w, d],
    [LONG, d],
    [LONG, THICK],
    [0, THICK],
  ];
  const marks: Mark[] = [
    { kind: 'polygon', points, fill: 'wood', pen: 'edge' },
    dimension({ from: LONG - w, to: LONG, words: lengths.bare(width), trace: width }, 'x', -5, {
      foot: -0.8,
      label: 'over',
    }),
    dimension({ from: 0, to: d, words: lengths.bare(depth), trace: depth }, 'y', LONG + 5, {
      foot: LONG + 0.8,
      label: 'beside',
    }),
  ];
  return { width: LONG + 17, height: THICK + 11, marks: moved(marks, 0.5, 10) };
}

/** The end of a board cut at a slant, with the angle; the full face on top. Not to scale, the angle is true. */
export function bevelSection(angle: number): Drawing {
  const lost = Math.min(THICK * Math.tan((angle * Math.PI) / 180), LONG - 6);
  const points: PaperPoint[] = [
    [0, 0],
    [LONG, 0],
    [LONG - lost, THICK],
    [0, THICK],
  ];
  const marks: Mark[] = [
    { kind: 'polygon', points, fill: 'wood', pen: 'edge' },
    { kind: 'line', from: [LONG, 0], to: [LONG, THICK], pen: 'centre', tone: 'quiet' },
    text([LONG + 1.6, THICK - 1], `${Math.round(angle * 10) / 10}°`, 3.1, { tone: 'measure' }),
  ];
  return { width: LONG + 12, height: THICK + 2, marks: moved(marks, 0.5, 1) };
}

/** A mitred end with the groove for a spline in its slope, the inner face on top. Not to scale, the angles are true. */
export function splineSection(): Drawing {
  const [down, wide, deep] = [3.2, 2.4, 5];
  const on = (far: number, inward: number): PaperPoint => [
    LONG - THICK + (far - inward) * Math.SQRT1_2,
    (far + inward) * Math.SQRT1_2,
  ];
  const points: PaperPoint[] = [
    [0, 0],
    on(0, 0),
    on(down, 0),
    on(down, deep),
    on(down + wide, deep),
    on(down + wide, 0),
    [LONG, THICK],
    [0, THICK],
  ];
  const marks: Mark[] = [
    { kind: 'polygon', points, fill: 'wood', pen: 'edge' },
    { kind: 'line', from: on(down, 0), to: on(down + wide, 0), pen: 'centre', tone: 'quiet' },
  ];
  return { width: LONG + 2, height: THICK + 2, marks: moved(marks, 0.5, 1) };
}
