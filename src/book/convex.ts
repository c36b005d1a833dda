import type { Point } from '../solid/index.ts';

/** A flat face: its outward normal, its distance from the origin along it, and its corners in order. */
export interface ConvexFace {
  readonly normal: Point;
  readonly offset: number;
  readonly corners: readonly Point[];
}

/** A convex body as its faces. */
export interface Convex {
  readonly faces: readonly ConvexFace[];
}

/** Millimetres under which two things count as touching. */
export const TOUCH = 1e-4;

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** a + b t */
export function along(a: Point, b: Point, t: number): Point {
  return [a[0] + b[0] * t, a[1] + b[1] * t, a[2] + b[2] * t];
}

export function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** A box of a part's own axes. */
export function convexBox(min: Point, max: Point): Convex {
  const faces: ConvexFace[] = [];
  for (const axis of [0, 1, 2] as const) {
    for (const sign of [-1, 1] as const) {
      const normal: [number, number, number] = [0, 0, 0];
      normal[axis] = sign;
      const at = sign > 0 ? max[axis] : min[axis];
      const u = ((axis + 1) % 3) as 0 | 1 | 2;
      const v = ((axis + 2) % 3) as 0 | 1 | 2;
      const corner = (a: number, b: number): Point => {
        const p: [number, number, number] = [0, 0, 0];
        p[axis] = at;
        p[u] = a;
        p[v] = b;
        return p;
      };
      const ring = [
        corner(min[u], min[v]),
        corner(max[u], min[v]),
        corner(max[u], max[v]),
        corner(min[u], max[v]),
      ];
      faces.push({ normal, offset: at * sign, corners: sign > 0 ? ring : ring.reverse() });
    }
  }
  return { faces };
}

/** What of a body lies on the inner side of a plane (normal . p <= offset); undefined when nothing does. */
export function clipped(body: Convex, normal: Point, offset: number): Convex | undefined {
  const faces: ConvexFace[] = [];
  const rim: Point[] = [];
  for (const face of body.faces) {
    const kept: Point[] = [];
    face.corners.forEach((p, i) => {
      const q = face.corners[(i + 1) % face.corners.length]!;
      const dp = dot(normal, p) - offset;
      const dq = dot(normal, q) - offset;
      if (dp <= TOUCH) kept.push(p);
      if (Math.abs(dp) <= TOUCH) rim.push(p);
      if ((dp < -TOUCH && dq > TOUCH) || (dp > TOUCH && dq < -TOUCH)) {
        const t = dp / (dp - dq);
        const cut: Point = [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, p[2] + (q[2] - p[2]) * t];
        kept.push(cut);
        rim.push(cut);
      }
    });
    if (kept.length >= 3 && kept.some((p) => dot(normal, p) < offset - TOUCH))
      faces.push({ ...face, corners: kept });
  }
  if (faces.length < 3) return undefined;
  const cap = ringOf(distinct(rim), normal);
  return { faces: cap.length >= 3 ? [...faces, { normal, offset, corners: cap }] : faces };
}

/** The straight edges of a body, each once. */
export function edgesOf(body: Convex): (readonly [Point, Point])[] {
  const found = new Map<string, readonly [Point, Point]>();
  for (const { corners } of body.faces) {
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % corners.length]!;
      const [a, b] = [key(p), key(q)].sort();
      if (a !== b) found.set(`${a} ${b}`, [p, q]);
    });
  }
  return [...found.values()];
}

function key(p: Point): string {
  return p.map((x) => Math.round(x * 1000)).join(',');
}

function distinct(points: readonly Point[]): Point[] {
  return [...new Map(points.map((p) => [key(p), p])).values()];
}

/** Points of a plane put in order round their middle, counter-clockwise seen against the normal. */
function ringOf(points: readonly Point[], normal: Point): Point[] {
  if (points.length < 3) return [];
  const n = points.length;
  const sum = points.reduce<Point>((s, p) => along(s, p, 1), [0, 0, 0]);
  const middle: Point = [sum[0] / n, sum[1] / n, sum[2] / n];
  const u = along(points[0]!, middle, -1);
  const v = cross(normal, u);
  const angle = (p: Point) => {
    const d = along(p, middle, -1);
    return Math.round(Math.atan2(dot(d, v), dot(d, u)) * 1e9) / 1e9;
  };
  return [...points].sort((a, b) => angle(a) - angle(b));
}
