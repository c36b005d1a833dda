import { type Convex, type ConvexFace, dot, TOUCH } from './convex.ts';
import { hullOf, type Looking, type PicturePoint, project } from './projection.ts';

/** Left, bottom, right and top of something in a picture. */
export type PictureBox = readonly [left: number, bottom: number, right: number, top: number];

/** A side of an outline: what lies inside has `x * p[0] + y * p[1]` greater than `least`. */
export interface HullSide {
  readonly x: number;
  readonly y: number;
  readonly least: number;
}

/** A convex body as it is seen from one side. */
export interface SeenConvex {
  readonly body: Convex;
  /** Its outline, counter-clockwise. */
  readonly hull: readonly PicturePoint[];
  readonly sides: readonly HullSide[];
  readonly box: PictureBox;
  /** The faces that look at the eye. */
  readonly facing: readonly ConvexFace[];
  /** How near the eye its corners are, in the mean. */
  readonly depth: number;
  /** For others that were asked about: 1 when this one is in front, -1 when behind, 0 when it doesn't matter. */
  readonly before: Map<SeenConvex, -1 | 0 | 1>;
}

const KEPT = new WeakMap<Looking, WeakMap<Convex, SeenConvex>>();

/** A body as it is seen; worked out once for each way of looking, since card after card shows the same parts. */
export function seenConvex(body: Convex, looking: Looking): SeenConvex {
  let kept = KEPT.get(looking);
  if (!kept) {
    kept = new WeakMap();
    KEPT.set(looking, kept);
  }
  let seen = kept.get(body);
  if (!seen) {
    seen = look(body, looking);
    kept.set(body, seen);
  }
  return seen;
}

function look(body: Convex, looking: Looking): SeenConvex {
  const corners = body.faces.flatMap((f) => f.corners);
  const hull = hullOf(corners.map((p) => project(looking, p)));
  const xs = hull.map((p) => p[0]);
  const ys = hull.map((p) => p[1]);
  return {
    body,
    hull,
    sides: hull.map((h, i): HullSide => {
      const k = hull[(i + 1) % hull.length]!;
      const size = Math.hypot(k[0] - h[0], k[1] - h[1]);
      const x = -(k[1] - h[1]) / size;
      const y = (k[0] - h[0]) / size;
      return { x, y, least: x * h[0] + y * h[1] + TOUCH * 10 };
    }),
    box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
    facing: body.faces.filter((f) => dot(f.normal, looking.eye) > 1e-9),
    depth: corners.reduce((s, p) => s + dot(p, looking.eye), 0) / corners.length,
    before: new Map(),
  };
}
