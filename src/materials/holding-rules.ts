import { fromMm } from '../measure/index.ts';

/** The smallest that is cut with power, so that it is held fast and no hand comes near a blade (common practice). */
export const HOLDING = {
  /** Longest side of a board under a portable saw. */
  board: fromMm(200),
  /** The longer side of a cut on a mitre saw, where a hand or a clamp holds it against the fence. */
  mitreSaw: fromMm(150),
} as const;
