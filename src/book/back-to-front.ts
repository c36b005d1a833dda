import type { Point } from '../solid/index.ts';
import { type Convex, dot, TOUCH } from './convex.ts';
import type { PartBody } from './part-body.ts';
import { hullOf, type Looking, type PicturePoint, project } from './projection.ts';

/** A convex body of a part, ready to be painted. */
export interface PaintCell {
  readonly part: string;
  readonly body: Convex;
}

interface Cell extends PaintCell {
  readonly hull: readonly PicturePoint[];
  /** Left, bottom, right and top of its outline. */
  readonly box: readonly [number, number, number, number];
  readonly depth: number;
}

/**
 * The cells of all parts, from back to front. Of two that overlap in the picture, a face of one has the other
 * wholly on its outer side; when that face looks at the eye the other is in front. Where such pairs run in a ring,
 * the cell farthest from the eye goes first.
 */
export function backToFront(bodies: readonly PartBody[], looking: Looking): PaintCell[] {
  const cells: Cell[] = bodies.flatMap((b) =>
    b.cells.map((body) => {
      const corners = body.faces.flatMap((f) => f.corners);
      const depth = corners.reduce((s, p) => s + dot(p, looking.eye), 0) / corners.length;
      const hull = hullOf(corners.map((p) => project(looking, p)));
      return { part: b.part, body, hull, box: boxOf(hull), depth };
    }),
  );
  const after: number[][] = cells.map(() => []);
  const waitsFor = cells.map(() => 0);
  cells.forEach((a, i) => {
    for (let j = i + 1; j < cells.length; j++) {
      const b = cells[j]!;
      if (!overlap(a, b)) continue;
      const front = inFront(a, b, looking);
      if (front === 0) continue;
      const [first, then] = front > 0 ? [j, i] : [i, j];
      after[first]!.push(then);
      waitsFor[then]!++;
    }
  });
  const order: PaintCell[] = [];
  const left = new Set(cells.keys());
  while (left.size > 0) {
    const ready = [...left].filter((i) => waitsFor[i] === 0);
    const next = farthest(cells, ready.length > 0 ? ready : [...left]);
    left.delete(next);
    for (const then of after[next]!) waitsFor[then]!--;
    order.push({ part: cells[next]!.part, body: cells[next]!.body });
  }
  return order;
}

function farthest(cells: readonly Cell[], of: readonly number[]): number {
  let least = of[0]!;
  for (const i of of) if (cells[i]!.depth < cells[least]!.depth - TOUCH) least = i;
  return least;
}

function boxOf(hull: readonly PicturePoint[]): Cell['box'] {
  const xs = hull.map((p) => p[0]);
  const ys = hull.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** 1 when `a` is in front of `b`, -1 when behind, 0 when no plane tells. */
function inFront(a: Cell, b: Cell, looking: Looking): -1 | 0 | 1 {
  const bBeyondA = beyond(a, b, looking);
  if (bBeyondA !== 0) return bBeyondA > 0 ? -1 : 1;
  return beyond(b, a, looking);
}

/** 1 when the other lies wholly before a face that looks at the eye, -1 when before one that looks away, 0 for neither. */
function beyond(of: Cell, other: Cell, looking: Looking): -1 | 0 | 1 {
  for (const { normal, offset } of of.body.faces) {
    const toward = dot(normal, looking.eye);
    if (Math.abs(toward) >= 1e-9 && isOutside(other, normal, offset)) return toward > 0 ? 1 : -1;
  }
  return 0;
}

function isOutside({ body }: Cell, normal: Point, offset: number): boolean {
  for (const g of body.faces) for (const p of g.corners) if (dot(normal, p) < offset - 1e-2) return false;
  return true;
}

/** Whether two convex outlines share more than a border. */
function overlap(a: Cell, b: Cell): boolean {
  if (a.box[0] >= b.box[2] || b.box[0] >= a.box[2] || a.box[1] >= b.box[3] || b.box[1] >= a.box[3])
    return false;
  return !isApart(a.hull, b.hull) && !isApart(b.hull, a.hull);
}

/** True when some side of an outline has all of the other on its far side. */
function isApart(of: readonly PicturePoint[], other: readonly PicturePoint[]): boolean {
  for (let i = 0; i < of.length; i++) {
    const h = of[i]!;
    const k = of[(i + 1) % of.length]!;
    const size = Math.hypot(k[0] - h[0], k[1] - h[1]);
    if (other.every((m) => ((k[0] - h[0]) * (m[1] - h[1]) - (k[1] - h[1]) * (m[0] - h[0])) / size < 1e-2))
      return true;
  }
  return false;
}
