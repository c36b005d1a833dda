import { toMm } from '../measure/index.ts';
import { POCKET_DEGREES, POCKET_HOLE } from './pocket-holes.ts';

/** The angle of a countersink, side to side: 90 degrees for metric screws (ISO 10642 and ISO 7046, from memory). */
export const SINK_DEGREES = 90;

/** What a pocket bit leaves in a board, mm. All of it is measured from where the bit's axis meets the joint face. */
export interface PocketShape {
  /** The axis leans this much from the face that is bored into. */
  readonly degrees: number;
  /** Radius of the wide bore, and of the hole that goes on to the joint. */
  readonly boreRadius: number;
  readonly shankRadius: number;
  /** How far above the board's other face the axis comes out: half the thickness. */
  readonly middle: number;
  /** Along the axis: from the joint to the flat seat of the head, one thickness of the board. */
  readonly seat: number;
  /** Along the axis: from the joint to where the bore has wholly left the face. */
  readonly out: number;
  /** Along the face: from the joint to the far end of the bore's mouth. */
  readonly mouth: number;
}

/** The shape of a pocket in a board of a thickness (mm), from the bit's sizes and its lean. Geometry. */
export function pocketShape(thickness: number): PocketShape {
  const lean = (POCKET_DEGREES * Math.PI) / 180;
  const [sine, cosine] = [Math.sin(lean), Math.cos(lean)];
  const boreRadius = toMm(POCKET_HOLE.bore.value) / 2;
  const middle = thickness / 2;
  return {
    degrees: POCKET_DEGREES,
    boreRadius,
    shankRadius: toMm(POCKET_HOLE.shank.value) / 2,
    middle,
    seat: thickness,
    out: (middle + boreRadius * cosine) / sine,
    mouth: (middle + boreRadius / cosine) * (cosine / sine),
  };
}
