import type { Sourced } from './sourced.ts';

/** A way in which furniture is tried for tipping. */
export interface StabilityLoad extends Sourced {
  readonly id: string;
  readonly says: string;
  /** A level pull, at most this high. */
  readonly pull?: { readonly newtons: number; readonly highestMm: number };
  /** A weight on the front of what is pulled out or opened. */
  readonly weightKg?: number;
  /** The block under the rear feet that stands for a carpet. */
  readonly blockMm?: number;
  readonly tiltDegrees?: number;
}

/**
 * Loads that checks try. Standards for storage units cover other furniture than most of what is set out here, and
 * trying these loads approximates a test, it is no proof of one. Anchor tall or shallow pieces to the wall.
 */
export const STABILITY_LOADS: readonly StabilityLoad[] = [
  {
    id: 'lean',
    says: 'a pull of 44.5 N (10 lb) at a hand hold, no higher than 1.42 m',
    pull: { newtons: 44.5, highestMm: 1420 },
    source: 'ASTM F2057-23, 9.2.2, by 88 FR 28408; from memory',
    confirmed: false,
  },
  {
    id: 'child',
    says: 'a weight of 27.2 kg (60 lb) on the edge of an open drawer, rear feet on a block of 10.9 mm',
    weightKg: 27.2,
    blockMm: 10.9,
    source: 'ASTM F2057-23, 9.2.3, by 88 FR 28408; from memory',
    confirmed: false,
  },
  {
    id: 'handle',
    says: 'a pull of 75 N on a door or drawer, for pieces higher than 600 mm',
    pull: { newtons: 75, highestMm: 1600 },
    source: 'EN 14749:2016; from memory',
    confirmed: false,
  },
  {
    id: 'tilt',
    says: 'a tilt of 10 degrees, for what weighs 11 kg or more',
    tiltDegrees: 10,
    source: 'rule for floor-standing appliances, quoted in an equipment manual',
    confirmed: true,
  },
];

/** A stability load by its id (`lean`, `child`, `handle`, `tilt`). */
export function stabilityLoad(id: string): StabilityLoad | undefined {
  return STABILITY_LOADS.find((s) => s.id === id);
}
