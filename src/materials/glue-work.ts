import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

/** How long glue work takes and what it needs, for one pair of hands. */
export const GLUE_WORK = {
  /** Minutes to open a joint, spread, and see that it is wet. */
  minutesPerJoint: 0.35,
  /** Minutes to spread a metre of joint with brush or bottle. */
  minutesPerMetre: 0.8,
  /** Minutes to bring a part to its place and close it. */
  minutesPerPart: 1,
  /** Minutes to set a clamp with its pads, opened to size beforehand. */
  minutesPerClamp: 0.4,
  /** Minutes to glue both holes of a dowel or both slots of a biscuit, and put it in. */
  minutesPerPeg: 0.15,
  /** Minutes that sawn slopes of mitres are left to drink before they are glued again. */
  minutesToDrink: 2,
  /** Along an edge with a batten, a clamp at either end and one every so often, tape between, mm. */
  edgeClampEveryMm: 400,
  /** Across a joint a clamp at either edge, and another for so much more, mm. */
  jointClampEveryMm: 450,
  /** What a thin even film on one face of a joint takes, g/m², and what brush and rag keep of it. */
  gramsPerM2: 180,
  waste: 0.25,
  /** A mitred frame: two each way. */
  frameClamps: 4,
  /** A pair of cauls across a panel: one at either end. */
  caulClamps: 2,
  source: 'common practice; figures from memory',
  confirmed: false,
} as const satisfies Sourced & Record<string, unknown>;

/** How far a case or frame may lean where no fit says less. */
export const LEAN: LengthRow = {
  id: 'glue.lean',
  value: fromMm(1),
  says: 'a case leans by no more than this where no fit asks for less',
  source: 'common practice',
};

/**
 * How far the diagonals of a rectangle come to differ when it leans by one, by tenths from 0.1 to 2: about twice its
 * width over its diagonal. From (width + lean)² + height² and (width - lean)² + height², the square of the lean left out.
 */
export const LEANING_BY: readonly RatioRow[] = Array.from({ length: 20 }, (_, i) => ({
  id: `square.lean-${i + 1}`,
  of: [i + 1, 10] as const,
  says: `the width is ${(i + 1) / 20} of the diagonal or more, and the diagonals differ by twice as much of the lean`,
  source: 'geometry',
}));
