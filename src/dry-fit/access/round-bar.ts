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
export function runsInto(bar: RoundBar, member: Member): boolean {
  const { from, to, radius } = bar;
  const long = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  // Its rounded ends lie within its length.
  const end = long === 0 ? 0.5 : Math.min(0.5, radius / long);
  const box = boxOf(member);
  const at = (t: number) => outside(box, between(from, to, t));
  // How far a point of a straight line is from a box has one least place: it is closed in on.
  let [low, high] = [end, 1 - end];
  for (let i = 0; i < 40 && high - low > 1e-6; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (at(a) <= at(b)) high = b;
    else low = a;
  }
  return at((low + high) / 2) < radius - TOUCH;
}

/** The box a member fills, mm. */
export function boxOf(member: Member): Box {
  const planes = planesOf(member);
  return {
    min: [toMm(planes['-x']), toMm(planes['-y']), toMm(planes['-z'])],
    max: [toMm(planes['+x']), toMm(planes['+y']), toMm(planes['+z'])],
  };
}

function between(from: Point, to: Point, t: number): Point {
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
}

/** How far a point is from a box; nothing inside. */
function outside({ min, max }: Box, p: Point): number {
  const off = (i: number) => Math.max(0, min[i]! - p[i]!, p[i]! - max[i]!);
  return Math.hypot(off(0), off(1), off(2));
}
