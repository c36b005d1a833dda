import { TICKS_PER_MM } from '../../measure/index.ts';

type Vec = readonly [number, number, number];

/** A straight hole or screw, in ticks: its axis from end to end, its radius, and the parts it is in. */
export interface Bore {
  readonly parts: readonly string[];
  readonly from: Vec;
  readonly to: Vec;
  readonly radius: number;
}

/** Wood that is left between two holes, at least (common practice). */
export const WALL = 2 * TICKS_PER_MM;

/** Wood that is left between a hole and a channel, at least (common practice). */
const BESIDE_HOLLOW = TICKS_PER_MM;

/** A channel that has been cut, in ticks of the piece. */
export interface Hollow {
  readonly min: Vec;
  readonly max: Vec;
}

/** True when a bore comes too near a channel, or a box that fills one. */
export function meetsHollow(bore: Bore, hollow: Hollow): boolean {
  return touches(bore, hollow, bore.radius + BESIDE_HOLLOW);
}

/** True when the boxes round a bore, so much wider on all sides than its axis, and a channel share something. */
export function touches({ from, to }: Bore, { min, max }: Hollow, side: number): boolean {
  for (let k = 0; k < 3; k++)
    if (Math.min(from[k]!, to[k]!) - side >= max[k]! || Math.max(from[k]!, to[k]!) + side <= min[k]!)
      return false;
  return true;
}

/** Everything that has been bored or driven so far. */
export class Bores {
  private readonly inPart = new Map<string, Bore[]>();
  private readonly hollows = new Map<string, Hollow[]>();

  /** Notes a channel in a part, as a box of the piece in ticks. */
  hollow(part: string, box: Hollow): void {
    const list = this.hollows.get(part);
    if (list) list.push(box);
    else this.hollows.set(part, [box]);
  }

  add(bore: Bore): void {
    for (const part of bore.parts) {
      const list = this.inPart.get(part);
      if (list) list.push(bore);
      else this.inPart.set(part, [bore]);
    }
  }

  /** True when a new channel in a part would come too close to a bore or another channel in it. */
  meetsHollow(part: string, box: Hollow): boolean {
    const near = (other: Hollow) =>
      ([0, 1, 2] as const).every(
        (k) => box.min[k] - BESIDE_HOLLOW < other.max[k] && box.max[k] + BESIDE_HOLLOW > other.min[k],
      );
    return (
      (this.hollows.get(part)?.some(near) ?? false) ||
      (this.inPart.get(part)?.some((b) => touches(b, box, b.radius + BESIDE_HOLLOW)) ?? false)
    );
  }

  /** Where along an axis a new channel in a part would come too close to a bore or another channel in it, from and to. */
  taken(part: string, box: Hollow, along: 0 | 1 | 2): readonly (readonly [number, number])[] {
    const hollows = (this.hollows.get(part) ?? []).map((h) => ({ ...h, beside: BESIDE_HOLLOW }));
    const bores = (this.inPart.get(part) ?? []).map(({ from, to, radius }) => ({
      min: from.map((x, k) => Math.min(x, to[k]!)),
      max: from.map((x, k) => Math.max(x, to[k]!)),
      beside: radius + BESIDE_HOLLOW,
    }));
    return [...hollows, ...bores].flatMap(({ min, max, beside }) =>
      ([0, 1, 2] as const).every((k) => box.min[k] - beside < max[k]! && box.max[k] + beside > min[k]!)
        ? [[min[along]! - beside, max[along]! + beside] as const]
        : [],
    );
  }

  /** True when a new bore would come too close to one that shares a part with it. */
  meets(bore: Bore): boolean {
    for (const part of bore.parts) {
      if (this.hollows.get(part)?.some((box) => meetsHollow(bore, box))) return true;
      const others = this.inPart.get(part);
      if (!others) continue;
      for (let i = 0; i < others.length; i++)
        if (isNearer(bore, others[i]!, bore.radius + others[i]!.radius + WALL)) return true;
    }
    return false;
  }
}

/** True when two bores come nearer than so far. */
function isNearer(p: Bore, q: Bore, least: number): boolean {
  // Most lie far apart already by their boxes.
  for (let k = 0; k < 3; k++) {
    const a = p.from[k]!;
    const b = p.to[k]!;
    const c = q.from[k]!;
    const d = q.to[k]!;
    if (Math.min(a, b) - Math.max(c, d) >= least || Math.min(c, d) - Math.max(a, b) >= least) return false;
  }
  return distanceSquared(p, q) < least * least;
}

/** Square of the least distance between two segments (closest points, clamped to both). Geometry. */
function distanceSquared(p: Bore, q: Bore): number {
  // Written out in single numbers: this is asked for every screw against every other in its part.
  const [px, py, pz] = p.from;
  const [qx, qy, qz] = q.from;
  const ux = p.to[0] - px;
  const uy = p.to[1] - py;
  const uz = p.to[2] - pz;
  const vx = q.to[0] - qx;
  const vy = q.to[1] - qy;
  const vz = q.to[2] - qz;
  const wx = px - qx;
  const wy = py - qy;
  const wz = pz - qz;
  const a = ux * ux + uy * uy + uz * uz;
  const b = ux * vx + uy * vy + uz * vz;
  const c = vx * vx + vy * vy + vz * vz;
  const d = ux * wx + uy * wy + uz * wz;
  const e = vx * wx + vy * wy + vz * wz;
  const det = a * c - b * b;
  // The nearest point of p's line to q's, held to the segment; then q's nearest to that; then p's nearest again.
  const first = det > 1e-9 * a * c ? between(0, (b * e - c * d) / det, 1) : 0;
  const t = c > 0 ? between(0, (b * first + e) / c, 1) : 0;
  const s = a > 0 ? between(0, (b * t - d) / a, 1) : 0;
  const x = wx + s * ux - t * vx;
  const y = wy + s * uy - t * vy;
  const z = wz + s * uz - t * vz;
  return x * x + y * y + z * z;
}

function between(low: number, x: number, high: number): number {
  return Math.min(Math.max(x, low), high);
}
