import type { Ledger, Traced } from '../measure/index.ts';
import {
  type Axis,
  axisOf,
  type Direction,
  type Part,
  placeTicks,
  type TickBox,
  toPiece,
} from '../setting-out/index.ts';

/** A part's finished box in the piece: each side's plane, traced. */
export interface PartPlanes {
  readonly part: Part;
  readonly planes: Readonly<Record<Direction, Traced>>;
}

const DIRECTIONS: readonly Direction[] = ['+x', '-x', '+y', '-y', '+z', '-z'];

/** The six planes of a part as it stands. */
export function planesOf(ledger: Ledger, part: Part): PartPlanes {
  const { place } = part;
  const sizes: readonly [Direction, Traced][] = [
    [place.length, part.length],
    [place.width, part.width],
    [place.thickness, part.thickness],
  ];
  const planes = {} as Record<Direction, Traced>;
  for (const [d, size] of sizes) {
    const { axis, sign } = axisOf(d);
    const origin = place.origin[axis];
    const far =
      sign > 0 ? ledger.sum('the other side', origin, size) : ledger.less('the other side', origin, size);
    planes[d] = far;
    planes[DIRECTIONS.find((o) => o[1] === d[1] && o !== d)!] = origin;
  }
  return { part, planes };
}

/** A part's finished box in the piece, in ticks. */
export function boxOf(ledger: Ledger, part: Part): TickBox {
  return toPiece(placeTicks(ledger, part.place), {
    min: [0, 0, 0] as never,
    max: [part.length, part.width, part.thickness].map((t) => ledger.ticks(t)) as never,
  });
}

/** True when two parts overlap along an axis by more than nothing. */
export function overlap(ledger: Ledger, a: Part, b: Part, axis: Axis): boolean {
  const [p, q] = [boxOf(ledger, a), boxOf(ledger, b)];
  return p.min[axis] < q.max[axis] && q.min[axis] < p.max[axis];
}

/** `-x` for axis 0, and so on. */
export function lowSide(axis: Axis): Direction {
  return `-${'xyz'[axis]}` as Direction;
}

/** `+x` for axis 0, and so on. */
export function highSide(axis: Axis): Direction {
  return `+${'xyz'[axis]}` as Direction;
}
