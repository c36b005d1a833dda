import { backToFront, type PaintCell } from './back-to-front.ts';
import type { Mark, PaperPoint, Pen, Tone } from './drawing.ts';
import { type PictureLine, pictureLines, union, without } from './hidden-lines.ts';
import type { PartBody } from './part-body.ts';
import { type Looking, type PicturePoint, project } from './projection.ts';

/** How a part is shown: plain, brought out, or not filled at all (a line drawing). */
export type Showing = 'plain' | 'marked' | 'line';

/** The extent of a picture in millimetres of the piece, y up. */
export interface PictureBounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Parts as they are seen from one side, before any scale: every picture of them is drawn from this. */
export interface Sight {
  readonly looking: Looking;
  readonly bounds: PictureBounds;
  readonly lines: readonly PictureLine[];
  /** What is painted, from back to front. */
  readonly cells: readonly PaintCell[];
}

/** What is seen of the parts; `lines` where they are known already. */
export function sightOf(
  bodies: readonly PartBody[],
  looking: Looking,
  lines: readonly PictureLine[] = pictureLines(bodies, looking),
): Sight {
  return { looking, bounds: boundsOf(bodies, looking), lines, cells: backToFront(bodies, looking) };
}

/** Where the outermost points of the parts lie in the picture. */
function boundsOf(bodies: readonly PartBody[], looking: Looking): PictureBounds {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { edges } of bodies)
    for (const edge of edges)
      for (const p of edge) {
        const [x, y] = project(looking, p);
        left = Math.min(left, x);
        right = Math.max(right, x);
        bottom = Math.min(bottom, y);
        top = Math.max(top, y);
      }
  return { left, right, bottom, top };
}

/** What a picture looks like on paper. */
export interface PictureStyle {
  /** Paper millimetres for a millimetre of the piece. */
  readonly scale: number;
  /** Where the picture's (0, 0) lies on the paper. */
  readonly zero: PaperPoint;
  readonly showing: (part: string) => Showing;
  /** Whether hidden edges are drawn, dashed. */
  readonly hidden: boolean;
  /** Draws everything that isn't marked in a lighter line. */
  readonly light?: boolean;
}

/** The parts as lines and faces on paper: faces from back to front, then hidden, inner and rim lines. */
export function pictureMarks(
  { looking, lines, cells }: Sight,
  { scale, zero, showing, hidden, light }: PictureStyle,
): Mark[] {
  const paper = (p: PicturePoint): PaperPoint => [zero[0] + p[0] * scale, zero[1] - p[1] * scale];
  const marks: Mark[] = [];
  for (const cell of cells) {
    const how = showing(cell.part);
    for (const f of cell.seen.facing) {
      const fill = toneOf(how, f.normal);
      marks.push({ kind: 'polygon', points: f.corners.map((p) => paper(project(looking, p))), fill });
    }
  }
  const rank = (l: PictureLine) => {
    const marked = showing(l.part) === 'marked';
    if (l.seen === 'hidden') return hidden ? 'hidden' : undefined;
    if (marked) return 'marked';
    return l.seen;
  };
  const ranks = ['marked', 'rim', 'edge', 'hidden'] as const;
  const look: Record<(typeof ranks)[number], readonly [Pen, Tone]> = {
    marked: ['edge', 'ink'],
    rim: light ? ['thin', 'quiet'] : ['outline', 'ink'],
    edge: light ? ['fine', 'quiet'] : ['thin', 'ink'],
    hidden: ['hidden', 'quiet'],
  };
  const taken = new Map<string, (readonly [number, number])[]>();
  const drawn: Mark[] = [];
  for (const r of ranks) {
    const rows = new Map<string, Row>();
    for (const l of lines) if (rank(l) === r) addToRow(rows, l);
    for (const [key, row] of rows) {
      const before = taken.get(key) ?? [];
      for (const [s, t] of without(union(row.spans), before)) {
        if ((t - s) * scale < 0.05) continue;
        const at = (u: number): PicturePoint => [row.foot[0] + row.way[0] * u, row.foot[1] + row.way[1] * u];
        const [pen, tone] = look[r];
        drawn.push({ kind: 'line', from: paper(at(s)), to: paper(at(t)), pen, tone });
      }
      taken.set(key, union([...before, ...row.spans]));
    }
  }
  return [...marks, ...drawn.reverse()];
}

/** Lines of a picture that lie on one straight line, as spans along it. */
interface Row {
  readonly foot: PicturePoint;
  readonly way: PicturePoint;
  readonly spans: (readonly [number, number])[];
}

function addToRow(rows: Map<string, Row>, l: PictureLine): void {
  const size = Math.hypot(l.to[0] - l.from[0], l.to[1] - l.from[1]);
  let way: PicturePoint = [(l.to[0] - l.from[0]) / size, (l.to[1] - l.from[1]) / size];
  if (way[0] < -1e-6 || (Math.abs(way[0]) <= 1e-6 && way[1] < 0)) way = [-way[0], -way[1]];
  const offset = way[0] * l.from[1] - way[1] * l.from[0];
  const key = `${Math.round(way[1] * 1e4)} ${Math.round(way[0] * 1e4)} ${Math.round(offset * 50)}`;
  const row = rows.get(key) ?? { foot: [-way[1] * offset, way[0] * offset], way, spans: [] };
  const along = (p: PicturePoint) => way[0] * p[0] + way[1] * p[1];
  const [s, t] = [along(l.from), along(l.to)];
  row.spans.push([Math.min(s, t), Math.max(s, t)]);
  rows.set(key, row);
}

/** Top light, front middle, sides darker, as under a lamp above the left shoulder. */
function toneOf(how: Showing, normal: readonly [number, number, number]): Tone {
  if (how === 'line') return 'paper';
  const wood = how === 'marked';
  if (normal[2] > 0.5) return wood ? 'wood-top' : 'board-top';
  if (normal[0] > 0.5 || normal[2] < -0.5) return wood ? 'wood-side' : 'board-side';
  return wood ? 'wood' : 'board';
}
