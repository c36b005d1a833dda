import type { Point } from '../solid/index.ts';
import { type Convex, dot, TOUCH } from './convex.ts';
import type { PartBody } from './part-body.ts';
import { hullOf, type Looking, type PicturePoint, project } from './projection.ts';

/** A straight line of a picture. */
export interface PictureLine {
  readonly part: string;
  readonly from: PicturePoint;
  readonly to: PicturePoint;
  /** `rim`: nothing of the piece lies on one side of it; `edge`: within the piece; `hidden`: behind something. */
  readonly seen: 'rim' | 'edge' | 'hidden';
}

/** Linear conditions a + b t > 0, all of which hold on one open interval of t. */
type Condition = readonly [a: number, b: number];
type Interval = readonly [from: number, to: number];

/** What a convex body covers: the outline of its shadow, and the faces that look at the eye. */
interface Cover {
  readonly part: string;
  readonly hull: readonly PicturePoint[];
  readonly facing: readonly { readonly normal: Point; readonly offset: number }[];
}

/**
 * Every edge of every part, divided where it passes behind something. A convex body hides just the part of an edge
 * that lies inside its outline and behind all its faces toward the eye, and that is one interval, found by clipping.
 */
export function pictureLines(bodies: readonly PartBody[], looking: Looking): PictureLine[] {
  const covers = bodies.flatMap((b) => b.covers.map((c) => coverOf(b.part, c, looking)));
  const lines: PictureLine[] = [];
  for (const body of bodies) {
    for (const [p, q] of body.edges) {
      const a = project(looking, p);
      const b = project(looking, q);
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (size < 1e-3) continue;
      const at = (t: number): PicturePoint => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      const add = (spans: readonly Interval[], seen: PictureLine['seen']) => {
        for (const [s, t] of spans)
          if ((t - s) * size > 1e-2) lines.push({ part: body.part, from: at(s), to: at(t), seen });
      };
      const hidden = union(covers.flatMap((c) => interval(hiding(c, p, q, a, b))));
      const visible = without([[0, 1]], hidden);
      const aside = (side: number) => {
        const [nx, ny] = [((a[1] - b[1]) / size) * side * 0.05, ((b[0] - a[0]) / size) * side * 0.05];
        const move = (m: PicturePoint): PicturePoint => [m[0] + nx, m[1] + ny];
        return union(covers.flatMap((c) => interval(inside(c.hull, move(a), move(b)))));
      };
      const within = common(aside(1), aside(-1));
      add(without(visible, within), 'rim');
      add(common(visible, within), 'edge');
      add(hidden, 'hidden');
    }
  }
  return lines;
}

function coverOf(part: string, body: Convex, looking: Looking): Cover {
  return {
    part,
    hull: hullOf(body.faces.flatMap((f) => f.corners.map((p) => project(looking, p)))),
    facing: body.faces.filter((f) => dot(f.normal, looking.eye) > 1e-9),
  };
}

function hiding(c: Cover, p: Point, q: Point, a: PicturePoint, b: PicturePoint): Condition[] {
  const behind = c.facing.map((f): Condition => {
    const dp = f.offset - dot(f.normal, p);
    return [dp - TOUCH * 10, f.offset - dot(f.normal, q) - dp];
  });
  return [...inside(c.hull, a, b), ...behind];
}

/** The conditions under which the way from a to b runs inside an outline. */
function inside(hull: readonly PicturePoint[], a: PicturePoint, b: PicturePoint): Condition[] {
  return hull.map((h, i): Condition => {
    const k = hull[(i + 1) % hull.length]!;
    const size = Math.hypot(k[0] - h[0], k[1] - h[1]);
    const depth = (m: PicturePoint) => ((k[0] - h[0]) * (m[1] - h[1]) - (k[1] - h[1]) * (m[0] - h[0])) / size;
    const da = depth(a);
    return [da - TOUCH * 10, depth(b) - da];
  });
}

function interval(conditions: readonly Condition[]): Interval[] {
  let [from, to] = [0, 1];
  for (const [a, b] of conditions) {
    if (Math.abs(b) < 1e-12) {
      if (a <= 0) return [];
    } else if (b > 0) from = Math.max(from, -a / b);
    else to = Math.min(to, -a / b);
  }
  return to - from > 1e-9 ? [[from, to]] : [];
}

/** Intervals in order, run together where they touch. */
export function union(spans: readonly Interval[]): Interval[] {
  const out: [number, number][] = [];
  for (const [s, t] of [...spans].sort((x, y) => x[0] - y[0] || x[1] - y[1])) {
    const last = out[out.length - 1];
    if (last && s <= last[1] + 1e-6) last[1] = Math.max(last[1], t);
    else out.push([s, t]);
  }
  return out;
}

/** What of `spans` is not in `taken`; both in order and apart. */
export function without(spans: readonly Interval[], taken: readonly Interval[]): Interval[] {
  let left: Interval[] = [...spans];
  for (const [s, t] of taken)
    left = left.flatMap(([a, b]): Interval[] => {
      if (t <= a || s >= b) return [[a, b]];
      return [...(s > a ? ([[a, s]] as Interval[]) : []), ...(t < b ? ([[t, b]] as Interval[]) : [])];
    });
  return left.filter(([a, b]) => b - a > 1e-9);
}

function common(spans: readonly Interval[], other: readonly Interval[]): Interval[] {
  return without(spans, without([[0, 1]], other));
}
