import { toMm } from '../../measure/index.ts';
import type { Point } from '../../solid/index.ts';
import { type Member, planesOf } from '../assembly.ts';
import type { Box } from '../shape-bounds.ts';

/** A round bar with rounded ends that just reach both points, mm. */
export interface RoundBar {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
}

/** How far a tool may touch wood before it counts, mm: what rounding on cards leaves, and a hand gives way. */
const TOUCH = 1;

/** True when a bar runs into the box that a member fills. */
export function runsInto({ from, to, radius }: RoundBar, member: Member): boolean {
  const box = boxOf(member);
  // Most of what stands there lies well beside it.
  for (let i = 0; i < 3; i++)
    if (
      Math.min(from[i]!, to[i]!) - radius > box.max[i]! ||
      Math.max(from[i]!, to[i]!) + radius < box.min[i]!
    )
      return false;
  const long = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  // Its rounded ends lie within its length.
  const end = long === 0 ? 0.5 : Math.min(0.5, radius / long);
  // How far a point of a straight line is from a box has one least place: it is closed in on.
  let low = end;
  let high = 1 - end;
  for (let i = 0; i < 40 && high - low > 1e-6; i++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (outside(box, from, to, a) <= outside(box, from, to, b)) high = b;
    else low = a;
  }
  return Math.sqrt(outside(box, from, to, (low + high) / 2)) < radius - TOUCH;
}

/** The box a member fills, mm. */
export function boxOf(member: Member): Box {
  const known = BOXES.get(member);
  if (known) return known;
  const planes = planesOf(member);
  const box: Box = {
    min: [toMm(planes['-x']), toMm(planes['-y']), toMm(planes['-z'])],
    max: [toMm(planes['+x']), toMm(planes['+y']), toMm(planes['+z'])],
  };
  BOXES.set(member, box);
  return box;
}

// A member never changes, and every tool is tried against everything that stands there.
const BOXES = new WeakMap<Member, Box>();

/** Square of how far the point at `t` of the way is from a box; nothing inside. */
function outside({ min, max }: Box, from: Point, to: Point, t: number): number {
  let sum = 0;
  for (let i = 0; i < 3; i++) {
    const at = from[i]! + (to[i]! - from[i]!) * t;
    const off = at < min[i]! ? min[i]! - at : at > max[i]! ? at - max[i]! : 0;
    sum += off * off;
  }
  return sum;
}
