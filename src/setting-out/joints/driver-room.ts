import { BIT_RADIUS, BITS, DRIVERS, type DriverBody } from '../../materials/index.ts';
import { type LengthRow, TICKS_PER_MM, ticks } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { boxTicks, type TickBox } from '../place.ts';

type Vec = readonly [number, number, number];

/** Places at which a driver is looked at lie so far apart along its axis, in ticks. */
const EVERY = 6 * TICKS_PER_MM;

/** A screw and what stands beside it are both placed by printed numbers: they may come so much nearer, in ticks. */
const ROUNDED = 1.5 * TICKS_PER_MM;

/** How far from a screw's head any driver comes, and how far from its axis. */
const LONGEST = Math.max(...BITS.map((b) => b.value)) + Math.max(...DRIVERS.map((d) => d.length.value));
const WIDEST = Math.max(
  ...DRIVERS.map((d) => Math.max(d.radius.value, d.grip.length.value + d.grip.radius.value)),
);

/** A way that a driver goes: where the screw's head is (ticks), and the direction from there out to the hand. */
export interface DriverWay {
  readonly head: Vec;
  readonly out: Vec;
  /** The part that the head is in: the bit may stand in its bore. */
  readonly own: Pick<DraftPart, 'box'>;
}

/** What turns a screw, and how far its bit stands out of it. */
export interface ChosenDriver {
  readonly driver: string;
  readonly bit: LengthRow;
}

/** True when one of the usual drivers, with a short bit or a long one, stands clear of parts that are there. */
export function driverRoom(draft: Draft, way: DriverWay, standing: readonly DraftPart[]): boolean {
  const others = standing.filter((p) => p !== way.own).map((p) => boxTicks(draft.ledger, p.box));
  return driverAt(way, boxTicks(draft.ledger, way.own.box), others) !== undefined;
}

/** The handiest of the usual drivers that stands clear of the part itself and of others, with the shortest bit. */
export function driverAt(
  way: Pick<DriverWay, 'head' | 'out'>,
  own: TickBox,
  standing: readonly TickBox[],
): ChosenDriver | undefined {
  const others = standing
    .filter((box) => isBeside(box, way.head, way.out, 0, LONGEST, WIDEST))
    .map((box) => grown(box));
  const all = [own, ...others];
  for (const body of DRIVERS)
    for (const bit of BITS) {
      if (!isClear(way.head, way.out, 0, bit.value, BIT_RADIUS.value, others)) continue;
      const [radius, end] = [body.radius.value, bit.value + body.length.value];
      if (!isClear(way.head, way.out, bit.value + radius, end - radius, radius, all)) continue;
      if (hasGrip(way, bit.value, body, all)) return { driver: body.id, bit };
    }
  return undefined;
}

function grown({ min, max }: TickBox): TickBox {
  const by = (of: TickBox['min'], d: number): TickBox['min'] => [
    ticks(of[0] + d),
    ticks(of[1] + d),
    ticks(of[2] + d),
  ];
  return { min: by(min, -ROUNDED), max: by(max, ROUNDED) };
}

/** True when a hand finds room for the grip on some side of the axis. */
function hasGrip(
  { head, out }: Pick<DriverWay, 'head' | 'out'>,
  bit: number,
  { grip }: DriverBody,
  boxes: readonly TickBox[],
): boolean {
  const at = bit + grip.behind.value;
  const root: Vec = [head[0] + out[0] * at, head[1] + out[1] * at, head[2] + out[2] * at];
  const radius = grip.radius.value;
  const [u, v] = squareTo(out);
  for (const [a, b] of ROUND) {
    const side: Vec = [u[0] * a + v[0] * b, u[1] * a + v[1] * b, u[2] * a + v[2] * b];
    if (isClear(root, side, radius, grip.length.value - radius, radius, boxes)) return true;
  }
  return false;
}

/** Eight ways round an axis, as shares of two directions square to it. */
const ROUND = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [Math.SQRT1_2, Math.SQRT1_2],
  [Math.SQRT1_2, -Math.SQRT1_2],
  [-Math.SQRT1_2, Math.SQRT1_2],
  [-Math.SQRT1_2, -Math.SQRT1_2],
] as const;

/** Two directions square to another and to each other, the first of them along an axis. */
function squareTo([x, y, z]: Vec): readonly [Vec, Vec] {
  // The axis that it lies square to, or nearly.
  const u: Vec = Math.abs(y) < 1e-9 ? [0, 1, 0] : Math.abs(x) < 1e-9 ? [1, 0, 0] : [0, 0, 1];
  return [u, [y * u[2] - z * u[1], z * u[0] - x * u[2], x * u[1] - y * u[0]]];
}

function isClear(
  head: Vec,
  out: Vec,
  from: number,
  to: number,
  radius: number,
  boxes: readonly TickBox[],
): boolean {
  const count = Math.max(1, Math.ceil((to - from) / EVERY));
  for (const box of boxes) {
    if (!isBeside(box, head, out, from, to, radius)) continue;
    for (let i = 0; i <= count; i++)
      if (isWithin(box, head, out, from + ((to - from) * i) / count, radius)) return false;
  }
  return true;
}

/** Whether a box comes so near to the stretch that it must be looked at in places. */
function isBeside(box: TickBox, head: Vec, out: Vec, from: number, to: number, radius: number): boolean {
  for (let k = 0; k < 3; k++) {
    const a = head[k]! + out[k]! * from;
    const b = head[k]! + out[k]! * to;
    if (box.min[k]! - Math.max(a, b) >= radius || Math.min(a, b) - box.max[k]! >= radius) return false;
  }
  return true;
}

/** Whether a box comes nearer than a radius to the place so far along the way. */
function isWithin(box: TickBox, head: Vec, out: Vec, along: number, radius: number): boolean {
  let squared = 0;
  for (let k = 0; k < 3; k++) {
    const at = head[k]! + out[k]! * along;
    const off = Math.max(0, box.min[k]! - at, at - box.max[k]!);
    squared += off * off;
  }
  return squared < radius * radius;
}
