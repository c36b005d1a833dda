import { N_PER_KG } from '../measure/index.ts';

/** Something with weight: how far behind the edge it would tip over (negative in front of it), and how high. */
export interface Weight {
  readonly kg: number;
  readonly behindMm: number;
  readonly heightMm: number;
}

/** Someone pulling or pushing level, toward the edge. */
export interface Pull {
  readonly newtons: number;
  readonly heightMm: number;
}

/** Moments about the edge. It stands while what rights it is more than what overturns it. */
export interface Balance {
  readonly rightingNmm: number;
  readonly overturningNmm: number;
  /** Righting over overturning; infinite when nothing overturns. */
  readonly ratio: number;
  readonly stands: boolean;
}

/**
 * Statics of a rigid body about its front edge: each weight counts W (x cos t - z sin t), x behind the edge, z high,
 * t the tilt forward; a level pull F at height z overturns by F z. Moments to a thousandth of a N mm.
 */
export function balance(
  weights: readonly Weight[],
  { pull, tiltDegrees = 0 }: { readonly pull?: Pull; readonly tiltDegrees?: number } = {},
): Balance {
  const tilt = (tiltDegrees * Math.PI) / 180;
  const [cos, sin] = [twelve(Math.cos(tilt)), twelve(Math.sin(tilt))];
  let righting = 0;
  let overturning = pull === undefined ? 0 : pull.newtons * pull.heightMm;
  for (const w of weights) {
    const moment = w.kg * N_PER_KG * (w.behindMm * cos - w.heightMm * sin);
    if (moment >= 0) righting += moment;
    else overturning -= moment;
  }
  const rightingNmm = Math.round(righting * 1000) / 1000;
  const overturningNmm = Math.round(overturning * 1000) / 1000;
  const ratio = overturningNmm === 0 ? Number.POSITIVE_INFINITY : rightingNmm / overturningNmm;
  return { rightingNmm, overturningNmm, ratio, stands: rightingNmm > overturningNmm };
}

/** The level pull in N at a height that just tips the weights, on level ground; below zero when they tip alone. */
export function tippingPullN(weights: readonly Weight[], heightMm: number): number {
  const { rightingNmm, overturningNmm } = balance(weights);
  return (rightingNmm - overturningNmm) / heightMm;
}

/** The tilt forward, in degrees, of a piece whose rear feet stand on a block. */
export function tiltOfBlock(blockMm: number, feetApartMm: number): number {
  return degrees(Math.asin(blockMm / feetApartMm));
}

/** The tilt at which a piece tips by itself: atan(x / z) of its centre of mass, degrees. */
export function tipAngle(behindMm: number, heightMm: number): number {
  return degrees(Math.atan2(behindMm, heightMm));
}

/** The middle of several weights, and their sum. */
export function centreOf(weights: readonly Weight[]): Weight {
  const kg = weights.reduce((sum, w) => sum + w.kg, 0);
  const mean = (of: (w: Weight) => number) =>
    kg === 0 ? 0 : weights.reduce((sum, w) => sum + w.kg * of(w), 0) / kg;
  return { kg, behindMm: mean((w) => w.behindMm), heightMm: mean((w) => w.heightMm) };
}

function degrees(radians: number): number {
  return Math.round(((radians * 180) / Math.PI) * 1e9) / 1e9;
}

function twelve(x: number): number {
  return Math.round(x * 1e12) / 1e12;
}
