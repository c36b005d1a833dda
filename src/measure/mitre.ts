import { roundHalfAway, type Ticks, ticks } from './ticks.ts';

/**
 * How much longer one mitred end makes the long side of a piece of the given width: width x tan(angle), the angle
 * counted from a square cut. To the nearest tick; at 45 degrees it is the width itself.
 */
export function mitreGain(width: Ticks, degrees: number): Ticks {
  if (degrees === 45) return width;
  return ticks(roundHalfAway(width * rounded(Math.tan((degrees * Math.PI) / 180))));
}

/** The length of the cut face itself, width / cos(angle), to the nearest tick. It feeds no other size. */
export function mitreFace(width: Ticks, degrees: number): Ticks {
  return ticks(roundHalfAway(width / rounded(Math.cos((degrees * Math.PI) / 180))));
}

/** Tangents and cosines differ in the last digit between machines; twelve decimals are the same on all. */
function rounded(x: number): number {
  return Math.round(x * 1e12) / 1e12;
}
