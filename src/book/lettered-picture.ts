import type { SetOut } from '../setting-out/index.ts';
import type { PaintCell } from './back-to-front.ts';
import { type Drawing, type Mark, moved, text } from './drawing.ts';
import { bodiesOf } from './part-body.ts';
import { pictureMarks, sightOf } from './picture.ts';
import type { Looking, PicturePoint } from './projection.ts';
import { CAP, type TextMeasure } from './text-measure.ts';

const TYPE = 3.1;
/** Distance of the points at which the picture is probed, on paper. */
const STEP = 1.2;
const FARTHEST = 6;

/** The piece with each part's mark on it, wherever enough of the part is seen to hold the letters. */
export function letteredPicture(
  setOut: SetOut,
  looking: Looking,
  room: { readonly width: number; readonly height: number },
  type: TextMeasure,
): Drawing {
  const sight = sightOf(bodiesOf(setOut), looking);
  const b = sight.bounds;
  const edge = 0.6;
  const scale = Math.min(
    (room.width - edge * 2) / (b.right - b.left),
    (room.height - edge * 2) / (b.top - b.bottom),
  );
  const [width, height] = [(b.right - b.left) * scale, (b.top - b.bottom) * scale];
  const marks: Mark[] = pictureMarks(sight, {
    scale,
    zero: [-b.left * scale, b.top * scale],
    showing: () => 'plain',
    hidden: false,
    light: true,
  });
  const columns = Math.floor(width / STEP);
  const rows = Math.floor(height / STEP);
  const seen = partsSeen(
    sight.cells,
    Array.from({ length: columns }, (_, i) => b.left + ((i + 0.5) * STEP) / scale),
    Array.from({ length: rows }, (_, j) => b.top - ((j + 0.5) * STEP) / scale),
  );
  for (const part of setOut.parts) {
    const half = Math.ceil((type.width(part.mark, TYPE, 'semibold') / 2 + 0.5) / STEP);
    const place = roomiest(seen, columns, rows, part.id, half);
    if (!place) continue;
    const at = [(place[0] + 0.5) * STEP, (place[1] + 0.5) * STEP + (TYPE * CAP) / 2] as const;
    marks.push(text(at, part.mark, TYPE, { face: 'semibold', anchor: 'middle' }));
  }
  return { width: width + edge * 2, height: height + edge * 2, marks: moved(marks, edge, edge) };
}

/** The part that is seen at each point of a grid, row by row; the last one painted there. */
function partsSeen(
  cells: readonly PaintCell[],
  xs: readonly number[],
  ys: readonly number[],
): (string | undefined)[] {
  const there: (string | undefined)[] = new Array(xs.length * ys.length).fill(undefined);
  for (const { part, seen } of cells) {
    const [left, bottom, right, top] = seen.box;
    ys.forEach((y, j) => {
      if (y <= bottom || y >= top) return;
      for (let i = 0; i < xs.length; i++) {
        const x = xs[i]!;
        if (x > left && x < right && within(seen.hull, x, y)) there[j * xs.length + i] = part;
      }
    });
  }
  return there;
}

function within(hull: readonly PicturePoint[], x: number, y: number): boolean {
  for (let i = 0; i < hull.length; i++) {
    const h = hull[i]!;
    const k = hull[(i + 1) % hull.length]!;
    if ((k[0] - h[0]) * (y - h[1]) - (k[1] - h[1]) * (x - h[0]) <= 0) return false;
  }
  return true;
}

/** The grid point with the most of its part around it; undefined when the mark fits nowhere. */
function roomiest(
  seen: readonly (string | undefined)[],
  columns: number,
  rows: number,
  part: string,
  half: number,
): readonly [number, number] | undefined {
  const all = (i: number, j: number, more: number) => {
    const [w, h] = [half + more, 1 + more];
    if (i < w || j < h || i + w >= columns || j + h >= rows) return false;
    for (let y = j - h; y <= j + h; y++)
      for (let x = i - w; x <= i + w; x++) if (seen[y * columns + x] !== part) return false;
    return true;
  };
  let best: { readonly at: readonly [number, number]; readonly more: number } | undefined;
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      if (seen[j * columns + i] !== part) continue;
      let more = best ? best.more + 1 : 0;
      if (more > FARTHEST || !all(i, j, more)) continue;
      while (more < FARTHEST && all(i, j, more + 1)) more++;
      best = { at: [i, j], more };
    }
  return best?.at;
}
