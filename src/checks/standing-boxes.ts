import { type Ticks, ticks, toMm } from '../measure/index.ts';
import { type Part, placeTicks, type SetOut, type TickBox, toPiece } from '../setting-out/index.ts';
import type { Point } from '../solid/index.ts';

/** A part's bounding box in the standing piece, in mm. */
export interface StandingBox {
  readonly min: Point;
  readonly max: Point;
}

/** The box that a part fills, from its place and its three sizes alone. */
export function standingBox(setOut: SetOut, part: Part): StandingBox {
  const l = setOut.ledger;
  return placed(
    setOut,
    part,
    [0, 0, 0],
    [l.ticks(part.length), l.ticks(part.width), l.ticks(part.thickness)],
  );
}

/** A box in a part's own coordinates (length, width, thickness, in ticks), as it stands. */
export function placed(
  setOut: SetOut,
  part: Part,
  min: readonly [number, number, number],
  max: readonly [number, number, number],
): StandingBox {
  const own = (p: readonly [number, number, number]): readonly [Ticks, Ticks, Ticks] => [
    ticks(p[0]),
    ticks(p[1]),
    ticks(p[2]),
  ];
  return inMm(toPiece(placeTicks(setOut.ledger, part.place), { min: own(min), max: own(max) }));
}

/** Every part's box by id. */
export function standingBoxes(setOut: SetOut): ReadonlyMap<string, StandingBox> {
  return new Map(setOut.parts.map((p) => [p.id, standingBox(setOut, p)]));
}

function inMm(box: TickBox): StandingBox {
  const point = (p: TickBox['min']): Point => [toMm(p[0]), toMm(p[1]), toMm(p[2])];
  return { min: point(box.min), max: point(box.max) };
}
