import { BIT_RADIUS, BITS, DRIVERS, type DriverBody } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import type { Point } from '../../solid/index.ts';
import type { Member } from '../assembly.ts';
import { type RoundBar, runsInto } from './round-bar.ts';

/** Directions aside of its axis in which a driver's grip may stand. */
const ASIDE = 8;

/**
 * What stands where a driver must be to turn a screw, by its mark; undefined where one of the usual drivers finds room.
 * The screw's head is at `head` and goes in along `along`; its bit may stand in a bore of `own`.
 */
export function driverMeets(
  members: readonly Member[],
  own: Member,
  head: Point,
  along: Point,
): string | undefined {
  const back = (d: number): Point => [head[0] - along[0] * d, head[1] - along[1] * d, head[2] - along[2] * d];
  const others = members.filter((m) => m !== own);
  const met: string[] = [];
  for (const body of DRIVERS)
    for (const bit of BITS) {
      const out = toMm(bit.value);
      const bar: RoundBar = { from: back(0), to: back(out), radius: toMm(BIT_RADIUS.value) };
      const found = others.find((m) => runsInto(bar, m)) ?? bodyMeets(members, body, back, out, along);
      if (!found) return undefined;
      met.push(found.mark);
    }
  // The part itself is always near a bit that is too short for its bore: what else is there is worth naming.
  return met.find((mark) => mark !== own.mark) ?? own.mark;
}

function bodyMeets(
  members: readonly Member[],
  body: DriverBody,
  back: (d: number) => Point,
  out: number,
  along: Point,
): Member | undefined {
  const round: RoundBar = {
    from: back(out),
    to: back(out + toMm(body.length.value)),
    radius: toMm(body.radius.value),
  };
  const met = members.find((m) => runsInto(round, m));
  if (met) return met;
  const root = back(out + toMm(body.grip.behind.value));
  const reach = toMm(body.grip.length.value);
  let first: Member | undefined;
  for (const side of sidesOf(along)) {
    const grip: RoundBar = {
      from: root,
      to: [root[0] + side[0] * reach, root[1] + side[1] * reach, root[2] + side[2] * reach],
      radius: toMm(body.grip.radius.value),
    };
    const blocked = members.find((m) => runsInto(grip, m));
    if (!blocked) return undefined;
    first ??= blocked;
  }
  return first;
}

/** Directions square to an axis, all round. */
function sidesOf(along: Point): readonly Point[] {
  // Any direction that isn't the axis will do to begin with.
  const other: Point = Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit(cross(along, other));
  const v = cross(along, u);
  return Array.from({ length: ASIDE }, (_, i): Point => {
    const [c, s] = [Math.cos((2 * Math.PI * i) / ASIDE), Math.sin((2 * Math.PI * i) / ASIDE)];
    return [u[0] * c + v[0] * s, u[1] * c + v[1] * s, u[2] * c + v[2] * s];
  });
}

function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(p: Point): Point {
  const long = Math.hypot(p[0], p[1], p[2]);
  return [p[0] / long, p[1] / long, p[2] / long];
}
