import type { SetOut } from '../setting-out/index.ts';
import { type Drawing, type Mark, moved, text } from './drawing.ts';
import { type PictureLine, pictureLines } from './hidden-lines.ts';
import { bodiesOf } from './part-body.ts';
import { pictureMarks, sightOf } from './picture.ts';
import { ISOMETRIC, ISOMETRIC_BEHIND } from './projection.ts';

export interface IsometricStyle {
  /** The parts that are there; all when absent. */
  readonly parts?: readonly string[];
  /** The parts brought out in tone; the rest is drawn lighter. */
  readonly marked?: readonly string[];
  /** The largest paper it may take. */
  readonly room: { readonly width: number; readonly height: number };
}

/** Less of the marked parts' edges than this is seen: then the piece is shown from behind, where that helps. */
const ENOUGH = 0.4;

/**
 * The piece, or some of its parts, as an isometric drawing with hidden lines removed: from the front right above, or
 * from behind (and it says so) when the marked parts would hardly be seen.
 */
export function isometric(setOut: SetOut, style: IsometricStyle): Drawing {
  const wanted = style.parts && new Set(style.parts);
  const marked = new Set(style.marked ?? []);
  const bodies = bodiesOf(setOut).filter((b) => !wanted || wanted.has(b.part));
  if (bodies.length === 0) return { width: 0, height: 0, marks: [] };
  let looking = ISOMETRIC;
  let lines = pictureLines(bodies, looking);
  const front = seenShare(lines, marked);
  if (front < ENOUGH) {
    const behind = pictureLines(bodies, ISOMETRIC_BEHIND);
    if (seenShare(behind, marked) > front) {
      looking = ISOMETRIC_BEHIND;
      lines = behind;
    }
  }
  const sight = sightOf(bodies, looking, lines);
  const b = sight.bounds;
  const edge = 0.6;
  const caption = looking === ISOMETRIC ? 0 : 4.5;
  const scale = Math.min(
    (style.room.width - edge * 2) / (b.right - b.left),
    (style.room.height - edge * 2 - caption) / (b.top - b.bottom),
  );
  const marks: Mark[] = pictureMarks(sight, {
    scale,
    zero: [-b.left * scale, b.top * scale],
    showing: (part) => (marked.has(part) ? 'marked' : 'plain'),
    hidden: false,
    light: marked.size > 0,
  });
  const [width, height] = [(b.right - b.left) * scale, (b.top - b.bottom) * scale];
  if (caption > 0)
    marks.push(text([width / 2, height + 4], 'seen from behind', 2.7, { anchor: 'middle', tone: 'quiet' }));
  return {
    width: width + edge * 2,
    height: height + edge * 2 + caption,
    marks: moved(marks, edge, edge),
  };
}

/** How much of the marked parts' edges can be seen; all when nothing is marked. */
function seenShare(lines: readonly PictureLine[], marked: ReadonlySet<string>): number {
  let [seen, all] = [0, 0];
  for (const l of lines) {
    if (!marked.has(l.part)) continue;
    const size = Math.hypot(l.to[0] - l.from[0], l.to[1] - l.from[1]);
    all += size;
    if (l.seen !== 'hidden') seen += size;
  }
  return all === 0 ? 1 : Math.round((seen / all) * 1000) / 1000;
}
