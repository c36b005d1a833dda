import { MM_PER_INCH, N_PER_LBF } from '../measure/index.ts';

/**
 * What a wood screw may be pulled with, N a mm of thread: W = 2850 G^2 D pounds an inch, G the specific gravity
 * (ovendry volume), D the screw's diameter in inches. For thread in side grain of dry wood that stays dry; not for
 * end grain. A design value, about a fifth of what tears it out. NDS 2018 eq. 12.2-2.
 */
export function withdrawalNPerMm(specificGravity: number, diameterMm: number): number {
  return (2850 * specificGravity ** 2 * (diameterMm / MM_PER_INCH) * N_PER_LBF) / MM_PER_INCH;
}

/** What a screw may be pulled with, N, with `threadMm` of its thread in the wood. */
export function screwHoldsN(specificGravity: number, diameterMm: number, threadMm: number): number {
  return withdrawalNPerMm(specificGravity, diameterMm) * Math.max(0, threadMm);
}
