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
      return { part: b.part, body, hull: hullOf(corners.map((p) => project(looking, p))), depth };
    }),
  );
  const before: Set<number>[] = cells.map(() => new Set());
  cells.forEach((a, i) => {
    for (let j = i + 1; j < cells.length; j++) {
      const b = cells[j]!;
      if (!overlap(a.hull, b.hull)) continue;
      const front = inFront(a, b, looking);
      if (front > 0) before[i]!.add(j);
      else if (front < 0) before[j]!.add(i);
    }
  });
  const order: PaintCell[] = [];
  const left = new Set(cells.keys());
  const farthest = (of: number[]) =>
    of.reduce((m, i) => (cells[i]!.depth < cells[m]!.depth - TOUCH ? i : m), of[0]!);
  while (left.size > 0) {
    const ready = [...left].filter((i) => ![...before[i]!].some((j) => left.has(j)));
    const next = farthest(ready.length > 0 ? ready : [...left]);
    left.delete(next);
    order.push({ part: cells[next]!.part, body: cells[next]!.body });
  }
  return order;
}

/** 1 when `a` is in front of `b`, -1 when behind, 0 when no plane tells. */
function inFront(a: Cell, b: Cell, looking: Looking): -1 | 0 | 1 {
  const beyond = (of: Cell, other: Cell) => {
    for (const f of of.body.faces) {
      const toward = dot(f.normal, looking.eye);
      if (Math.abs(toward) < 1e-9) continue;
      const outside = other.body.faces.every((g) =>
        g.corners.every((p) => dot(f.normal, p) >= f.offset - 1e-2),
      );
      if (outside) return toward > 0 ? 1 : -1;
    }
    return 0;
  };
  const bBeyondA = beyond(a, b);
  if (bBeyondA !== 0) return bBeyondA > 0 ? -1 : 1;
  return beyond(b, a) as -1 | 0 | 1;
}

/** Whether two convex outlines share more than a border. */
function overlap(a: readonly PicturePoint[], b: readonly PicturePoint[]): boolean {
  const apart = (of: readonly PicturePoint[], other: readonly PicturePoint[]) =>
    of.some((h, i) => {
      const k = of[(i + 1) % of.length]!;
      const size = Math.hypot(k[0] - h[0], k[1] - h[1]);
      return other.every(
        (m) => ((k[0] - h[0]) * (m[1] - h[1]) - (k[1] - h[1]) * (m[0] - h[0])) / size < 1e-2,
      );
    });
  return !apart(a, b) && !apart(b, a);
}
