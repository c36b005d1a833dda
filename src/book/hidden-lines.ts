import type { Point } from '../solid/index.ts';
import { dot, TOUCH } from './convex.ts';
import type { PartBody } from './part-body.ts';
import { type Looking, type PicturePoint, project } from './projection.ts';
import { type SeenConvex, seenConvex } from './seen-convex.ts';

/** A straight line of a picture. */
export interface PictureLine {
  readonly part: string;
  readonly from: PicturePoint;
  readonly to: PicturePoint;
  /** `rim`: nothing of the piece lies on one side of it; `edge`: within the piece; `hidden`: behind something. */
  readonly seen: 'rim' | 'edge' | 'hidden';
}

type Interval = readonly [from: number, to: number];

/** How far beside a line one looks to see whether the piece goes on there, in millimetres. */
const ASIDE = 0.05;

/**
 * Every edge of every part, divided where it passes behind something. A convex body hides just the part of an edge
 * that lies inside its outline and behind all its faces toward the eye, and that is one interval, found by clipping.
 */
export function pictureLines(bodies: readonly PartBody[], looking: Looking): PictureLine[] {
  const covers = new Covers(bodies.flatMap((b) => b.covers.map((c) => seenConvex(c, looking))));
  const lines: PictureLine[] = [];
  for (const body of bodies)
    for (const [p, q] of body.edges) {
      const a = project(looking, p);
      const b = project(looking, q);
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (size < 1e-3) continue;
      const near = covers.near(a, b);
      const hidden = stretches(near, (c) => isHidden(c, a, b, p, q));
      const visible = hidden === WHOLE ? [] : without(WHOLE, hidden);
      const within =
        visible.length === 0
          ? []
          : grown(common(beside(near, a, b, 1), beside(near, a, b, -1)), (ASIDE * 3) / size);
      const pieces = [
        ['rim', without(visible, within)],
        ['edge', common(visible, within)],
        ['hidden', hidden],
      ] as const;
      for (const [seen, spans] of pieces)
        for (const [s, t] of spans)
          if ((t - s) * size > 1e-2)
            lines.push({ part: body.part, from: at(a, b, s), to: at(a, b, t), seen });
    }
  return lines;
}

function at(a: PicturePoint, b: PicturePoint, t: number): PicturePoint {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** Where the piece lies right beside a line of the picture, on its left (1) or its right (-1). */
function beside(
  near: readonly SeenConvex[],
  a: PicturePoint,
  b: PicturePoint,
  side: 1 | -1,
): readonly Interval[] {
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const dx = ((a[1] - b[1]) / size) * side * ASIDE;
  const dy = ((b[0] - a[0]) / size) * side * ASIDE;
  const from: PicturePoint = [a[0] + dx, a[1] + dy];
  const to: PicturePoint = [b[0] + dx, b[1] + dy];
  return stretches(near, (c) => inside(c, from, to));
}

const WHOLE: readonly Interval[] = [[0, 1]];

/** The stretches of a line that any of the bodies takes, in order; no more are asked once one takes all of it. */
function stretches(near: readonly SeenConvex[], takes: (c: SeenConvex) => boolean): readonly Interval[] {
  const found: Interval[] = [];
  for (const c of near) {
    if (!takes(c)) continue;
    if (STRETCH.from === 0 && STRETCH.to === 1) return WHOLE;
    found.push([STRETCH.from, STRETCH.to]);
  }
  return union(found);
}

/** Covers by where they lie in the picture. */
class Covers {
  private readonly all: readonly SeenConvex[];
  /** Left, bottom, right and top of each, in one list: every line is held against every box. */
  private readonly boxes: Float64Array;

  constructor(all: readonly SeenConvex[]) {
    this.all = all;
    this.boxes = Float64Array.from(all.flatMap((c) => c.box));
  }

  /** Those that a line can come near to, with room for looking to both of its sides. */
  near(a: PicturePoint, b: PicturePoint): readonly SeenConvex[] {
    const left = Math.min(a[0], b[0]) - 2 * ASIDE;
    const right = Math.max(a[0], b[0]) + 2 * ASIDE;
    const low = Math.min(a[1], b[1]) - 2 * ASIDE;
    const high = Math.max(a[1], b[1]) + 2 * ASIDE;
    const found: SeenConvex[] = [];
    for (let i = 0, at = 0; i < this.all.length; i++, at += 4)
      if (
        left < this.boxes[at + 2]! &&
        right > this.boxes[at]! &&
        low < this.boxes[at + 3]! &&
        high > this.boxes[at + 1]!
      )
        found.push(this.all[i]!);
    return found;
  }
}

/** The stretch of a line, from 0 to 1, on which everything asked for so far holds. Reused: nothing is made per line. */
const STRETCH = { from: 0, to: 1 };

/** Holds the stretch to where a + b t is above nothing; false when that leaves none of it. */
function holdTo(a: number, b: number): boolean {
  if (Math.abs(b) < 1e-12) return a > 0;
  const t = -a / b;
  if (b > 0) {
    if (t > STRETCH.from) STRETCH.from = t;
  } else if (t < STRETCH.to) STRETCH.to = t;
  return STRETCH.to - STRETCH.from > 1e-9;
}

/** Holds a fresh stretch to where the way from a to b runs inside an outline; false when none of it does. */
function inside({ sides }: SeenConvex, a: PicturePoint, b: PicturePoint): boolean {
  STRETCH.from = 0;
  STRETCH.to = 1;
  for (const { x, y, least } of sides)
    if (!holdTo(x * a[0] + y * a[1] - least, x * (b[0] - a[0]) + y * (b[1] - a[1]))) return false;
  return true;
}

/** Holds a fresh stretch to where a line is inside an outline and behind every face that looks at the eye. */
function isHidden(c: SeenConvex, a: PicturePoint, b: PicturePoint, p: Point, q: Point): boolean {
  if (!inside(c, a, b)) return false;
  for (const { normal, offset } of c.facing) {
    const dp = offset - dot(normal, p);
    if (!holdTo(dp - TOUCH * 10, offset - dot(normal, q) - dp)) return false;
  }
  return true;
}

/** Intervals made longer at both ends: looking to the side falls short by a little at an outline's corners. */
function grown(spans: readonly Interval[], by: number): Interval[] {
  return union(spans.map(([s, t]): Interval => [Math.max(0, s - by), Math.min(1, t + by)]));
}

/** Intervals in order, run together where they touch. */
export function union(spans: readonly Interval[]): Interval[] {
  const out: [number, number][] = [];
  const inOrder = spans.length < 2 ? spans : [...spans].sort(byFrom);
  for (const [s, t] of inOrder) {
    const last = out[out.length - 1];
    if (last && s <= last[1] + 1e-6) last[1] = Math.max(last[1], t);
    else out.push([s, t]);
  }
  return out;
}

function byFrom(a: Interval, b: Interval): number {
  return a[0] - b[0] || a[1] - b[1];
}

/** What of `spans` is not in `taken`; both in order and apart. */
export function without(spans: readonly Interval[], taken: readonly Interval[]): Interval[] {
  let left: readonly Interval[] = spans;
  for (const [s, t] of taken) {
    const rest: Interval[] = [];
    for (const whole of left) {
      const [a, b] = whole;
      if (t <= a || s >= b) rest.push(whole);
      else {
        if (s > a) rest.push([a, s]);
        if (t < b) rest.push([t, b]);
      }
    }
    left = rest;
  }
  return left.filter(([a, b]) => b - a > 1e-9);
}

function common(spans: readonly Interval[], other: readonly Interval[]): readonly Interval[] {
  if (spans === WHOLE) return other;
  return other === WHOLE ? spans : without(spans, without(WHOLE, other));
}
