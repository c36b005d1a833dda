import { CLAMP, FIT_LIMITS } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import type { Point } from '../../solid/index.ts';
import type { Member } from '../assembly.ts';
import type { Box } from '../shape-bounds.ts';
import { boxOf, type RoundBar, runsInto } from './round-bar.ts';

type Axis = 0 | 1 | 2;

/** Where two parts meet: the axis along which they are pressed, and the area, mm. */
export interface Meeting {
  readonly axis: Axis;
  readonly area: Box;
}

/** Parts may stand so far apart and still meet, and so deep in one another where one is let in, mm (from memory). */
const APART = 0.5;
const LET_IN = 20;
/** A clamp draws together what stands no farther apart than a panel may be cut too short. */
const DRAWN = toMm(FIT_LIMITS.tooShort.value);

/**
 * Where the boxes of two parts meet in a face; undefined where they don't. They are pressed along the axis on which each of them goes on
 * beyond the other: a thin divider stands deeper in its dado than it is thick. Where there is none, along that of which they share least.
 */
export function meetingOf(a: Member, b: Member): Meeting | undefined {
  const [p, q] = [boxOf(a), boxOf(b)];
  const area = { min: [0, 0, 0] as [number, number, number], max: [0, 0, 0] as [number, number, number] };
  for (const k of [0, 1, 2] as const) {
    area.min[k] = Math.max(p.min[k], q.min[k]);
    area.max[k] = Math.min(p.max[k], q.max[k]);
    if (area.max[k] - area.min[k] < -APART) return undefined;
  }
  const shared = (k: Axis) => area.max[k] - area.min[k];
  const near = ([0, 1, 2] as const).filter((k) => shared(k) <= LET_IN);
  const ends = near.filter((k) => goOnBothWays(p, q, k));
  const [axis] = (ends.length > 0 ? ends : near).sort((k, m) => shared(k) - shared(m));
  return axis === undefined ? undefined : { axis, area };
}

/** Does one of two boxes go on beyond the other at one end, and the other beyond it at the other? */
function goOnBothWays(p: Box, q: Box, k: Axis): boolean {
  const low = q.min[k] - p.min[k];
  const high = q.max[k] - p.max[k];
  return (low > APART && high > APART) || (low < -APART && high < -APART);
}

/** Places along a joint, from either of its ends, at which a clamp is tried, mm; and beyond it, as far as a batten of usual length reaches (from memory). */
const FROM_END = [15, 45, 80, 120];
const BEYOND = Array.from({ length: 20 }, (_, i) => -15 - 30 * i);

/**
 * The mark of what keeps clamps from pressing a joint together at one of its ends; undefined where both can be reached.
 * A clamp's jaws lie on whatever stands against the joint on both sides, or on battens that lie there and reach
 * beyond it; its bar runs beside everything, no farther away than its throat is deep.
 */
export function clampMeets(members: readonly Member[], { axis, area }: Meeting): string | undefined {
  const [u, v] = ([0, 1, 2] as const).filter((k) => k !== axis) as [Axis, Axis];
  const along = area.max[u] - area.min[u] >= area.max[v] - area.min[v] ? u : v;
  const across = along === u ? v : u;
  const long = area.max[along] - area.min[along];
  for (const end of ['min', 'max'] as const) {
    let met: string | undefined;
    const half = Math.max(0, (area.max[across] - area.min[across]) / 2 - 1);
    const place = (from: number, aside: number): Point => {
      const at: [number, number, number] = [0, 0, 0];
      const step = Math.min(from, long / 2);
      at[along] = end === 'min' ? area.min[along] + step : area.max[along] - step;
      at[across] = (area.min[across] + area.max[across]) / 2 + aside;
      at[axis] = (area.min[axis] + area.max[axis]) / 2;
      return at;
    };
    const outer = outermost(members, axis, place(FROM_END[0]!, 0));
    const places = [...FROM_END, ...BEYOND].flatMap((from) =>
      [0, half, -half].map((off) => [from, off] as const),
    );
    const reached = places.some(([from, aside]) => {
      const at = place(from, aside);
      if (from < 0 && !carriesBattens(members, axis, at, outer)) return false;
      const faces = from < 0 ? outer : outermost(members, axis, at);
      const blocked = blocks(members, { axis, at, faces, beside: [along, across] });
      met ??= blocked;
      return blocked === undefined;
    });
    if (!reached) return met;
  }
  return undefined;
}

/** A clamp that is to press along the line through a point, its jaws on the faces that lie there on both sides. */
interface Tried {
  readonly axis: Axis;
  readonly at: Point;
  readonly faces: readonly [low: number, high: number];
  /** The axes along which its bar may stand aside. */
  readonly beside: readonly [Axis, Axis];
}

/** What is in the way of a clamp, wherever its bar is; undefined where it finds room. */
function blocks(
  members: readonly Member[],
  { axis, at, faces: [low, high], beside }: Tried,
): string | undefined {
  const [jaw, pad, bar] = [CLAMP.jaw, CLAMP.pad, CLAMP.bar].map((r) => toMm(r.value)) as [
    number,
    number,
    number,
  ];
  const on = (x: number): Point => moved(at, axis, x - at[axis]);
  // Pads lie on the outside, a hair before it.
  const pads: RoundBar[] = [low - pad - 1, high + pad + 1].map((x) => ({
    from: on(x),
    to: on(x),
    radius: pad,
  }));
  const held = members.find((m) => pads.some((p) => runsInto(p, m)));
  if (held) return held.mark;
  const screw = toMm(CLAMP.screw.value);
  const hands = [-1, 1].map((sign): RoundBar => {
    const from = sign < 0 ? low - jaw : high + jaw;
    return { from: on(from), to: on(from + sign * screw), radius: bar };
  });
  const noHand = hands.map((h) => members.find((m) => runsInto(h, m)));
  if (noHand.every((m) => m !== undefined)) return noHand[0]!.mark;
  let met: string | undefined;
  for (const side of beside)
    for (const sign of [-1, 1])
      for (let off = 2 * bar; off <= toMm(CLAMP.throat.value); off += 12) {
        const aside = (x: number) => moved(on(x), side, sign * off);
        const [a, b] = [low - jaw / 2, high + jaw / 2];
        const clamp: readonly RoundBar[] = [
          { from: aside(a), to: aside(b), radius: bar },
          { from: on(a), to: aside(a), radius: bar },
          { from: on(b), to: aside(b), radius: bar },
        ];
        const inWay = members.find((m) => clamp.some((c) => runsInto(c, m)));
        if (!inWay) return undefined;
        met ??= inWay.mark;
      }
  return met;
}

/** Whether the outer faces of a joint go on to a place beyond it, so that battens laid on them reach there. */
function carriesBattens(
  members: readonly Member[],
  axis: Axis,
  at: Point,
  [low, high]: readonly [number, number],
): boolean {
  const on = boxesAt(members, axis, at);
  return on.some((b) => b.min[axis] === low) && on.some((b) => b.max[axis] === high);
}

/** The boxes through which the line along an axis goes. */
function boxesAt(members: readonly Member[], axis: Axis, at: Point): readonly Box[] {
  return members
    .map(boxOf)
    .filter((b) => ([0, 1, 2] as const).every((k) => k === axis || (b.min[k] <= at[k] && b.max[k] >= at[k])));
}

/** How far wood goes on without a gap that stays open on both sides of a point, on the line through it along an axis. */
function outermost(members: readonly Member[], axis: Axis, at: Point): readonly [number, number] {
  const on = boxesAt(members, axis, at);
  let [low, high] = [at[axis], at[axis]];
  for (let before = Number.NaN; before !== high - low; ) {
    before = high - low;
    for (const box of on) {
      if (box.max[axis] < low - DRAWN || box.min[axis] > high + DRAWN) continue;
      low = Math.min(low, box.min[axis]);
      high = Math.max(high, box.max[axis]);
    }
  }
  return [low, high];
}

function moved(p: Point, axis: Axis, by: number): Point {
  const to: [number, number, number] = [p[0], p[1], p[2]];
  to[axis] += by;
  return to;
}
