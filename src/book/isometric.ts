import type { SetOut } from '../setting-out/index.ts';
import type { Drawing } from './drawing.ts';
import { moved } from './drawing.ts';
import { partBody } from './part-body.ts';
import { pictureBounds, pictureMarks } from './picture.ts';
import { ISOMETRIC } from './projection.ts';

export interface IsometricStyle {
  /** The parts that are there; all when absent. */
  readonly parts?: readonly string[];
  /** The parts brought out in tone; the rest is drawn lighter. */
  readonly marked?: readonly string[];
  /** The largest paper it may take. */
  readonly room: { readonly width: number; readonly height: number };
}

/** The piece, or some of its parts, as an isometric drawing with hidden lines removed. */
export function isometric(setOut: SetOut, style: IsometricStyle): Drawing {
  const wanted = style.parts && new Set(style.parts);
  const marked = new Set(style.marked ?? []);
  const bodies = setOut.parts
    .filter((p) => !wanted || wanted.has(p.id))
    .map((p) => partBody(setOut.ledger, p));
  if (bodies.length === 0) return { width: 0, height: 0, marks: [] };
  const b = pictureBounds(bodies, ISOMETRIC);
  const edge = 0.6;
  const scale = Math.min(
    (style.room.width - edge * 2) / (b.right - b.left),
    (style.room.height - edge * 2) / (b.top - b.bottom),
  );
  const marks = pictureMarks(bodies, ISOMETRIC, {
    scale,
    zero: [-b.left * scale, b.top * scale],
    showing: (part) => (marked.has(part) ? 'marked' : 'plain'),
    hidden: false,
    light: marked.size > 0,
  });
  return {
    width: (b.right - b.left) * scale + edge * 2,
    height: (b.top - b.bottom) * scale + edge * 2,
    marks: moved(marks, edge, edge),
  };
}
