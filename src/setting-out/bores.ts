import { TICKS_PER_MM } from '../measure/index.ts';

type Vec = readonly [number, number, number];

/** A straight hole or screw, in ticks: its axis from end to end, its radius, and the parts it is in. */
export interface Bore {
  readonly parts: readonly string[];
  readonly from: Vec;
  readonly to: Vec;
  readonly radius: number;
}

/** Wood that is left between two holes, at least (common practice). */
const WALL = 2 * TICKS_PER_MM;

/** Everything that has been bored or driven so far. */
export class Bores {
  private readonly inPart = new Map<string, Bore[]>();

  add(bore: Bore): void {
    for (const part of bore.parts) {
      const list = this.inPart.get(part);
      if (list) list.push(bore);
      else this.inPart.set(part, [bore]);
    }
  }

  /** True when a new bore would come too close to one that shares a part with it. */
  meets(bore: Bore): boolean {
    return bore.parts.some((part) =>
      this.inPart.get(part)?.some((other) => {
        const least = bore.radius + other.radius + WALL;
        return distanceSquared(bore, other) < least * least;
      }),
    );
  }
}

/** Square of the least distance between two segments (closest points, clamped to both). */
function distanceSquared(p: Bore, q: Bore): number {
  const u = minus(p.to, p.from);
  const v = minus(q.to, q.from);
  const w = minus(p.from, q.from);
  const a = dot(u, u);
  const b = dot(u, v);
  const c = dot(v, v);
  const d = dot(u, w);
  const e = dot(v, w);
  const det = a * c - b * b;
  const clamp = (x: number) => Math.min(1, Math.max(0, x));
  let s = det > 1e-9 * a * c ? clamp((b * e - c * d) / det) : 0;
  const t = clamp(c > 0 ? (b * s + e) / c : 0);
  s = clamp(a > 0 ? (b * t - d) / a : 0);
  const gap = [0, 1, 2].map((i) => w[i]! + s * u[i]! - t * v[i]!) as unknown as Vec;
  return dot(gap, gap);
}

function minus(a: Vec, b: Vec): Vec {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Vec, b: Vec): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
