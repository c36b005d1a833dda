import { BIT_RADIUS, BITS, DRIVERS, type DriverBody } from '../../materials/index.ts';
import { type LengthRow, TICKS_PER_MM } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { boxTicks, type TickBox } from '../place.ts';

type Vec = readonly [number, number, number];

/**
 * Places at which a driver is looked at lie so far apart along its axis, in ticks: less than any board is thick (our
 * own choice, no rule of the trade).
 */
const EVERY = 6 * TICKS_PER_MM;

/**
 * A screw and what stands beside it are both placed by printed numbers: they may come so much nearer, in ticks. Our own
 * allowance, no rule of the trade: a few numbers, each rounded to half a millimetre or to 1/32 of an inch.
 */
const ROUNDED = 1.5 * TICKS_PER_MM;

/** How far from a screw's head any driver comes, and how far from its axis. */
const LONGEST = Math.max(...BITS.map((b) => b.value)) + Math.max(...DRIVERS.map((d) => d.length.value));
const WIDEST = Math.max(
  ...DRIVERS.map((d) => Math.max(d.radius.value, d.grip.length.value + d.grip.radius.value)),
);

/** How much room the shortest driver needs behind a screw’s head, from memory of usual tools, in ticks. */
export const LEAST_ROOM =
  Math.min(...BITS.map((b) => b.value)) + Math.min(...DRIVERS.map((d) => d.length.value)) + ROUNDED;

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

/**
 * True when one of the usual drivers, with a short bit or a long one, stands clear of parts that are there.
 * @param edging strips on them: only a strip itself is in the way, without what roundings may add, as a driver may touch it
 */
export function driverRoom(
  draft: Draft,
  way: DriverWay,
  standing: readonly DraftPart[],
  edging: readonly DraftPart[] = [],
): boolean {
  const others: TickBox[] = [];
  for (const p of standing) {
    if (p === way.own) continue;
    const box = boxTicks(draft.ledger, p.box);
    if (isNear(box, way)) others.push(box);
  }
  for (const p of edging) {
    const box = boxTicks(draft.ledger, p.box);
    if (isNear(box, way)) others.push(withoutRounding(box));
  }
  return driverAmong(way, boxTicks(draft.ledger, way.own.box), others) !== undefined;
}

/** So much smaller a box as it is grown by when it is looked at. */
function withoutRounding({ min, max }: TickBox): TickBox {
  return {
    min: min.map((x) => x + ROUNDED) as unknown as TickBox['min'],
    max: max.map((x) => x - ROUNDED) as unknown as TickBox['max'],
  };
}

/** The handiest of the usual drivers that stands clear of the part itself and of others, with the shortest bit. */
export function driverAt(
  way: Pick<DriverWay, 'head' | 'out'>,
  own: TickBox,
  standing: readonly TickBox[],
): ChosenDriver | undefined {
  return driverAmong(
    way,
    own,
    standing.filter((box) => isNear(box, way)),
  );
}

/** True where a box stands so near that some driver might touch it. */
function isNear(box: TickBox, { head, out }: Pick<DriverWay, 'head' | 'out'>): boolean {
  return isBeside(box, 0, head, out, 0, LONGEST, WIDEST);
}

function driverAmong(
  way: Pick<DriverWay, 'head' | 'out'>,
  own: TickBox,
  others: readonly TickBox[],
): ChosenDriver | undefined {
  for (const body of DRIVERS)
    for (const bit of BITS) {
      if (!isClear(way.head, way.out, 0, bit.value, BIT_RADIUS.value, others, undefined)) continue;
      const [radius, end] = [body.radius.value, bit.value + body.length.value];
      if (!isClear(way.head, way.out, bit.value + radius, end - radius, radius, others, own)) continue;
      if (hasGrip(way, bit.value, body, others, own)) return { driver: body.id, bit };
    }
  return undefined;
}

/** True when a hand finds room for the grip on some side of the axis. */
function hasGrip(
  { head, out }: Pick<DriverWay, 'head' | 'out'>,
  bit: number,
  { grip }: DriverBody,
  others: readonly TickBox[],
  own: TickBox,
): boolean {
  const at = bit + grip.behind.value;
  const root: Vec = [head[0] + out[0] * at, head[1] + out[1] * at, head[2] + out[2] * at];
  const radius = grip.radius.value;
  for (const side of sidesOf(out))
    if (isClear(root, side, radius, grip.length.value - radius, radius, others, own)) return true;
  return false;
}

/** Eight directions square to a way out. The screws of a piece go but a few ways, which are lists that they share. */
function sidesOf(out: Vec): readonly Vec[] {
  const known = SIDES.get(out);
  if (known) return known;
  const [u, v] = squareTo(out);
  const sides = ROUND.map(({ a, b }): Vec => [u[0] * a + v[0] * b, u[1] * a + v[1] * b, u[2] * a + v[2] * b]);
  SIDES.set(out, sides);
  return sides;
}

const SIDES = new WeakMap<Vec, readonly Vec[]>();

/** Eight ways round an axis, as shares of two directions square to it. */
const ROUND = [
  { a: 1, b: 0 },
  { a: -1, b: 0 },
  { a: 0, b: 1 },
  { a: 0, b: -1 },
  { a: Math.SQRT1_2, b: Math.SQRT1_2 },
  { a: Math.SQRT1_2, b: -Math.SQRT1_2 },
  { a: -Math.SQRT1_2, b: Math.SQRT1_2 },
  { a: -Math.SQRT1_2, b: -Math.SQRT1_2 },
];

/** Two directions square to another and to each other, the first of them along an axis. */
function squareTo([x, y, z]: Vec): readonly [Vec, Vec] {
  // The axis that it lies square to, or nearly.
  const u: Vec = Math.abs(y) < 1e-9 ? [0, 1, 0] : Math.abs(x) < 1e-9 ? [1, 0, 0] : [0, 0, 1];
  return [u, [y * u[2] - z * u[1], z * u[0] - x * u[2], x * u[1] - y * u[0]]];
}

/** Whether a stretch of a way keeps clear of other parts, and of the screw's own one where that counts. */
function isClear(
  head: Vec,
  out: Vec,
  from: number,
  to: number,
  radius: number,
  others: readonly TickBox[],
  own: TickBox | undefined,
): boolean {
  if (own && isMet(own, 0, head, out, from, to, radius)) return false;
  for (const box of others) if (isMet(box, ROUNDED, head, out, from, to, radius)) return false;
  return true;
}

// Boxes are grown as they are looked at: this is asked at every place of every screw, and a grown box made each time
// was a twentieth of all that setting-out left to be swept up.

function isMet(
  box: TickBox,
  grown: number,
  head: Vec,
  out: Vec,
  from: number,
  to: number,
  radius: number,
): boolean {
  if (!isBeside(box, grown, head, out, from, to, radius)) return false;
  const count = Math.max(1, Math.ceil((to - from) / EVERY));
  for (let i = 0; i <= count; i++)
    if (isWithin(box, grown, head, out, from + ((to - from) * i) / count, radius)) return true;
  return false;
}

/** Whether a grown box comes so near to the stretch that it must be looked at in places. */
function isBeside(
  box: TickBox,
  grown: number,
  head: Vec,
  out: Vec,
  from: number,
  to: number,
  radius: number,
): boolean {
  for (let k = 0; k < 3; k++) {
    const a = head[k]! + out[k]! * from;
    const b = head[k]! + out[k]! * to;
    if (box.min[k]! - grown - Math.max(a, b) >= radius || Math.min(a, b) - (box.max[k]! + grown) >= radius)
      return false;
  }
  return true;
}

/** Whether a grown box comes nearer than a radius to the place so far along the way. */
function isWithin(box: TickBox, grown: number, head: Vec, out: Vec, along: number, radius: number): boolean {
  let squared = 0;
  for (let k = 0; k < 3; k++) {
    const at = head[k]! + out[k]! * along;
    const off = Math.max(0, box.min[k]! - grown - at, at - (box.max[k]! + grown));
    squared += off * off;
  }
  return squared < radius * radius;
}
