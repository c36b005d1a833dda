import { DRIVERS, FACE_SCREWS } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { type Axis, axisOf, boxTicks, type TickBox } from '../place.ts';
import { outward, planeOf } from './contact.ts';
import type { Heads } from './joint.ts';

/** The face that the heads of screws are on, and what lies under the row of them. */
export interface HeadRow {
  readonly part: DraftPart;
  readonly face: Face;
  /** From one end of the joint to the other, as wide as the heads, in ticks; flat on the face. */
  readonly strip: TickBox;
  /** The axis along which it is as wide as the heads, and how far a driver reaches from their middle there, in ticks. */
  readonly across: Axis;
  readonly driver: number;
}

/** The driver that needs least room aside. */
const NARROWEST = DRIVERS.reduce((a, b) => (b.radius.value < a.radius.value ? b : a));

/** The strip of a face under a row of heads over a contact. */
export function headRow(
  draft: Draft,
  part: DraftPart,
  face: Face,
  mate: DraftPart,
  headRadius: number,
): HeadRow {
  const l = draft.ledger;
  const [own, other] = [boxTicks(l, part.box), boxTicks(l, mate.box)];
  const { axis } = axisOf(outward(part.place, face));
  const { axis: across } = axisOf(mate.place.thickness);
  const plane = l.ticks(planeOf(part, face));
  const middle = (other.min[across] + other.max[across]) / 2;
  const ends = (k: Axis): readonly [number, number] => {
    if (k === axis) return [plane, plane];
    if (k === across) return [middle - headRadius, middle + headRadius];
    return [Math.max(own.min[k], other.min[k]), Math.min(own.max[k], other.max[k])];
  };
  const span = [ends(0), ends(1), ends(2)];
  return {
    part,
    face,
    strip: { min: span.map((s) => s[0]) as never, max: span.map((s) => s[1]) as never },
    across,
    driver: Math.max(headRadius, l.ticks(l.row(NARROWEST.radius))),
  };
}

/** Those of some parts that leave a driver no room before a row of heads. */
export function beforeHeads(
  draft: Draft,
  row: HeadRow,
  parts: readonly DraftPart[],
  room: number = draft.ledger.ticks(draft.ledger.row(FACE_SCREWS.driverRoom)),
): readonly DraftPart[] {
  const { axis, sign } = axisOf(outward(row.part.place, row.face));
  return parts.filter((p) => {
    if (p === row.part) return false;
    const box = boxTicks(draft.ledger, p.box);
    return ([0, 1, 2] as const).every((k) => {
      const [low, high] = [row.strip.min[k], row.strip.max[k]];
      if (k === row.across) {
        const middle = (low + high) / 2;
        return box.min[k] < middle + row.driver && box.max[k] > middle - row.driver;
      }
      if (k !== axis) return box.min[k] < high && box.max[k] > low;
      return sign > 0
        ? box.min[k] < high + room && box.max[k] > high
        : box.max[k] > low - room && box.min[k] < low;
    });
  });
}

/** Whether the heads will be seen: not from behind, nor under a low face, nor where another part lies on them. */
export function headsOf(draft: Draft, row: HeadRow): Heads {
  const l = draft.ledger;
  const looks = outward(row.part.place, row.face);
  const { axis, sign } = axisOf(looks);
  const lies = draft.parts.some((p) => {
    if (p === row.part) return false;
    const box = boxTicks(l, p.box);
    const plane = row.strip.min[axis];
    if ((sign > 0 ? box.min[axis] : box.max[axis]) !== plane) return false;
    return ([0, 1, 2] as const).every(
      (k) => k === axis || (box.min[k] <= row.strip.min[k] && box.max[k] >= row.strip.max[k]),
    );
  });
  if (lies) return { looks, sight: 'covered', finish: 'countersunk' };
  const height = row.strip.min[2];
  const hidden =
    looks === '+y' ||
    (looks === '-z' && height < l.ticks(l.row(FACE_SCREWS.lowFace))) ||
    (looks === '+z' && height > l.ticks(l.row(FACE_SCREWS.highFace)));
  return { looks, sight: hidden ? 'out-of-sight' : 'seen', finish: 'countersunk' };
}
