import type { Ledger, Ticks, Traced } from '../measure/index.ts';
import { ticks } from '../measure/index.ts';

/** A direction along one of the piece's axes: x to the right, y to the back, z up, seen from the front. */
export type Direction = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';

/** An axis of the piece or of a part. */
export type Axis = 0 | 1 | 2;

/**
 * Where a part stands: the piece coordinates of its local corner (start, near, under), and which way its length,
 * width and thickness run. The three directions are right-handed, so there are 24 ways.
 */
export interface Place {
  readonly origin: readonly [Traced, Traced, Traced];
  readonly length: Direction;
  readonly width: Direction;
  readonly thickness: Direction;
}

/** A box with traced corners, in piece coordinates or in a part's own. */
export interface TracedBox {
  readonly min: readonly [Traced, Traced, Traced];
  readonly max: readonly [Traced, Traced, Traced];
}

/** A box in ticks. */
export interface TickBox {
  readonly min: readonly [Ticks, Ticks, Ticks];
  readonly max: readonly [Ticks, Ticks, Ticks];
}

interface Signed {
  readonly axis: Axis;
  readonly sign: 1 | -1;
}

const AXES: Readonly<Record<Direction, Signed>> = {
  '+x': { axis: 0, sign: 1 },
  '-x': { axis: 0, sign: -1 },
  '+y': { axis: 1, sign: 1 },
  '-y': { axis: 1, sign: -1 },
  '+z': { axis: 2, sign: 1 },
  '-z': { axis: 2, sign: -1 },
};

const OPPOSITE: Readonly<Record<Direction, Direction>> = {
  '+x': '-x',
  '-x': '+x',
  '+y': '-y',
  '-y': '+y',
  '+z': '-z',
  '-z': '+z',
};

/** The axis and sign of a direction. */
export function axisOf(d: Direction): Signed {
  return AXES[d];
}

/** The other way along the same axis. */
export function opposite(d: Direction): Direction {
  return OPPOSITE[d];
}

const ONE_ALONG: Readonly<Record<Direction, readonly [number, number, number]>> = {
  '+x': [1, 0, 0],
  '-x': [-1, 0, 0],
  '+y': [0, 1, 0],
  '-y': [0, -1, 0],
  '+z': [0, 0, 1],
  '-z': [0, 0, -1],
};

/** A direction as a step of one in the piece; always the same list for the same direction. */
export function oneAlong(d: Direction): readonly [x: number, y: number, z: number] {
  return ONE_ALONG[d];
}

/** The two directions along each axis: down it and up it. Put together from letters they would be slower to compare. */
const ALONG = [
  ['-x', '+x'],
  ['-y', '+y'],
  ['-z', '+z'],
] as const;

/** The direction that makes a right-handed frame with the two given ones (first cross second). */
export function thirdDirection(first: Direction, second: Direction): Direction {
  const a = axisOf(first);
  const b = axisOf(second);
  if (a.axis === b.axis) throw new Error(`no third direction to ${first} and ${second}`);
  const axis = (3 - a.axis - b.axis) as Axis;
  const cyclic = (a.axis + 1) % 3 === b.axis ? 1 : -1;
  const sign = a.sign * b.sign * cyclic;
  return ALONG[axis][sign > 0 ? 1 : 0];
}

/** Reads a traced box in ticks. */
export function boxTicks(ledger: Ledger, box: TracedBox): TickBox {
  const known = KNOWN.get(box);
  if (known) return known;
  const [min, max] = [box.min, box.max];
  const found: TickBox = {
    min: [ledger.ticks(min[0]), ledger.ticks(min[1]), ledger.ticks(min[2])],
    max: [ledger.ticks(max[0]), ledger.ticks(max[1]), ledger.ticks(max[2])],
  };
  KNOWN.set(box, found);
  return found;
}

/** Boxes that were read before: they don't change, and each belongs to one ledger. */
const KNOWN = new WeakMap<TracedBox, TickBox>();

/** A box given in a part's own coordinates, as it stands in the piece. */
export function toPiece(place: PlaceTicks, box: TickBox): TickBox {
  const min: number[] = [...place.origin];
  const max: number[] = [...place.origin];
  const along = [place.length, place.width, place.thickness];
  along.forEach((d, local) => {
    const { axis, sign } = axisOf(d);
    const a = box.min[local as Axis] * sign;
    const b = box.max[local as Axis] * sign;
    min[axis] = place.origin[axis] + Math.min(a, b);
    max[axis] = place.origin[axis] + Math.max(a, b);
  });
  return { min: min.map(ticks) as never, max: max.map(ticks) as never };
}

/** A place with its origin read in ticks. */
export interface PlaceTicks {
  readonly origin: readonly [Ticks, Ticks, Ticks];
  readonly length: Direction;
  readonly width: Direction;
  readonly thickness: Direction;
}

/** Reads a place's origin in ticks. */
export function placeTicks(ledger: Ledger, place: Place): PlaceTicks {
  const [x, y, z] = place.origin;
  return { ...place, origin: [ledger.ticks(x), ledger.ticks(y), ledger.ticks(z)] };
}
