import type { Point } from '../solid/index.ts';
import { dot, TOUCH } from './convex.ts';
import type { PartBody } from './part-body.ts';
import type { Looking, PicturePoint } from './projection.ts';
import { type SeenConvex, seenConvex } from './seen-convex.ts';

/** A convex body of a part, ready to be painted. */
export interface PaintCell {
  readonly part: string;
  readonly seen: SeenConvex;
}

/**
 * The cells of all parts, from back to front. Of two that overlap in the picture, a face of one has the other
 * wholly on its outer side; when that face looks at the eye the other is in front. Where such pairs run in a ring,
 * the cell farthest from the eye goes first.
 */
export function backToFront(bodies: readonly PartBody[], looking: Looking): PaintCell[] {
  const cells: PaintCell[] = bodies.flatMap((b) =>
    b.cells.map((body) => ({ part: b.part, seen: seenConvex(body, looking) })),
  );
  const after: number[][] = cells.map(() => []);
  const waitsFor = cells.map(() => 0);
  for (let i = 0; i < cells.length; i++)
    for (let j = i + 1; j < cells.length; j++) {
      const front = before(cells[i]!.seen, cells[j]!.seen, looking);
      if (front === 0) continue;
      const [first, then] = front > 0 ? [j, i] : [i, j];
      after[first]!.push(then);
      waitsFor[then]!++;
    }
  const order: PaintCell[] = [];
  const isPainted = cells.map(() => false);
  while (order.length < cells.length) {
    const ready = farthest(cells, (i) => !isPainted[i] && waitsFor[i] === 0);
    const next = ready ?? farthest(cells, (i) => !isPainted[i])!;
    isPainted[next] = true;
    for (const then of after[next]!) waitsFor[then]!--;
    order.push(cells[next]!);
  }
  return order;
}

/** Of the cells that may come next, the one farthest from the eye; undefined when none may. */
function farthest(cells: readonly PaintCell[], mayCome: (i: number) => boolean): number | undefined {
  let least: number | undefined;
  for (let i = 0; i < cells.length; i++) {
    if (!mayCome(i)) continue;
    if (least === undefined || cells[i]!.seen.depth < cells[least]!.seen.depth - TOUCH) least = i;
  }
  return least;
}

/** 1 when `a` must be painted after `b`, -1 before it, 0 when they don't overlap or no plane tells. */
function before(a: SeenConvex, b: SeenConvex, looking: Looking): -1 | 0 | 1 {
  if (a.box[0] >= b.box[2] || b.box[0] >= a.box[2] || a.box[1] >= b.box[3] || b.box[1] >= a.box[3]) return 0;
  let known = a.before.get(b);
  if (known === undefined) {
    known = isApart(a.hull, b.hull) || isApart(b.hull, a.hull) ? 0 : inFront(a, b, looking);
    a.before.set(b, known);
  }
  return known;
}

/** 1 when `a` is in front of `b`, -1 when behind, 0 when no plane tells. */
function inFront(a: SeenConvex, b: SeenConvex, looking: Looking): -1 | 0 | 1 {
  const bBeyondA = beyond(a, b, looking);
  if (bBeyondA !== 0) return bBeyondA > 0 ? -1 : 1;
  return beyond(b, a, looking);
}

/** 1 when the other lies wholly before a face that looks at the eye, -1 when before one that looks away, 0 for neither. */
function beyond(of: SeenConvex, other: SeenConvex, looking: Looking): -1 | 0 | 1 {
  for (const { normal, offset } of of.body.faces) {
    const toward = dot(normal, looking.eye);
    if (Math.abs(toward) >= 1e-9 && isOutside(other, normal, offset)) return toward > 0 ? 1 : -1;
  }
  return 0;
}

function isOutside({ body }: SeenConvex, normal: Point, offset: number): boolean {
  for (const g of body.faces) for (const p of g.corners) if (dot(normal, p) < offset - 1e-2) return false;
  return true;
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
