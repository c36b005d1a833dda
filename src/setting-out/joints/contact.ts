import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import type { Side } from '../part.ts';
import { type Axis, axisOf, type Direction, opposite, type Place, type TracedBox } from '../place.ts';

/** Which way a side of a standing part looks. */
export function outward(place: Place, side: Side): Direction {
  switch (side) {
    case 'start':
      return opposite(place.length);
    case 'end':
      return place.length;
    case 'near':
      return opposite(place.width);
    case 'far':
      return place.width;
    case 'under':
      return opposite(place.thickness);
    case 'show':
      return place.thickness;
  }
}

/** The side of a standing part that looks in a direction. */
export function sideLooking(place: Place, direction: Direction): Side {
  if (direction === place.length) return 'end';
  if (direction === place.width) return 'far';
  if (direction === place.thickness) return 'show';
  const back = opposite(direction);
  return back === place.length ? 'start' : back === place.width ? 'near' : 'under';
}

/** Where a part's side lies along its own outward axis. */
export function planeOf(part: DraftPart, side: Side): Traced {
  const { axis, sign } = axisOf(outward(part.place, side));
  return sign > 0 ? part.box.max[axis] : part.box.min[axis];
}

/** The common extent of two parts along an axis, as the two traced ends. */
export function overlapAlong(
  draft: Draft,
  a: DraftPart,
  b: DraftPart,
  axis: Axis,
): readonly [Traced, Traced] {
  const l = draft.ledger;
  const low = l.ticks(a.box.min[axis]) >= l.ticks(b.box.min[axis]) ? a.box.min[axis] : b.box.min[axis];
  const high = l.ticks(a.box.max[axis]) <= l.ticks(b.box.max[axis]) ? a.box.max[axis] : b.box.max[axis];
  return [low, high];
}

/** The area in which a part's side touches a mate, flat across the joint. */
export function contactBox(draft: Draft, part: DraftPart, side: Side, mate: DraftPart): TracedBox {
  const { axis } = axisOf(outward(part.place, side));
  const plane = planeOf(part, side);
  const min: [Traced, Traced, Traced] = [plane, plane, plane];
  const max: [Traced, Traced, Traced] = [plane, plane, plane];
  for (let a: Axis = 0; a < 3; a++)
    if (a !== axis) [min[a], max[a]] = overlapAlong(draft, part, mate, a as Axis);
  return { min, max };
}

/** The axis of the piece along which an edge runs, given the face it is seen from. */
export function alongEdge(part: DraftPart, edge: Edge, face: Face): Axis {
  const across = axisOf(outward(part.place, edge)).axis;
  const through = axisOf(outward(part.place, face)).axis;
  return (3 - across - through) as Axis;
}

/** A piece coordinate along an axis, as a part's own measure from its start, near edge or under face. */
export function inPart(draft: Draft, part: DraftPart, axis: Axis, at: Traced, reason: string): Traced {
  const l = draft.ledger;
  const origin = part.place.origin[axis];
  return axisOf(runAlong(part.place, axis)).sign > 0
    ? l.less(reason, at, origin)
    : l.less(reason, origin, at);
}

/** Which of a part's three directions runs along an axis of the piece. */
function runAlong({ length, width, thickness }: Place, axis: Axis): Direction {
  if (axisOf(length).axis === axis) return length;
  return axisOf(width).axis === axis ? width : thickness;
}
