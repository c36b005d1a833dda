import { fromMm, type LengthRow } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

const TOYS = 'toy chests: EN 71-1, 4.14, and ASTM F963, 4.27; from memory';

/** What lids and chests are set out by. Each length stands in a trace as a leaf. */
export const LIDS = {
  fingerGap: {
    id: 'lid.finger-gap',
    value: fromMm(15),
    says: 'a gap of 12 mm and more under a lid pinches no fingers; 3 mm more for what settles',
    source: TOYS,
  } satisfies LengthRow as LengthRow,
  openGap: {
    id: 'lid.gap',
    value: fromMm(2),
    says: 'what stands under a lid stays this far below it',
    source: 'common practice',
  } satisfies LengthRow as LengthRow,
} as const;

/** A gap for fingers is narrower than the first of these, or at least as wide as the second, mm. */
export const PINCHING: Sourced & { readonly fromMm: number; readonly toMm: number } = {
  fromMm: 5,
  toMm: 12,
  source: TOYS,
  confirmed: false,
};

/** A space that a child fits in: so large, and so wide every way. It needs openings for air, so large and so far apart. */
export const SHUT_IN: Sourced & {
  readonly litres: number;
  readonly eachWayMm: number;
  readonly openings: number;
  readonly areaMm2: number;
  readonly apartMm: number;
} = {
  litres: 30,
  eachWayMm: 150,
  openings: 2,
  areaMm2: 650,
  apartMm: 150,
  source: TOYS,
  confirmed: false,
};

/** A lid that weighs more than this must be held open, kg. */
export const HELD_LID: Sourced & { readonly kg: number } = { kg: 0.45, source: TOYS, confirmed: false };

/** Acceleration of free fall, m/s2. */
export const GRAVITY = 9.81;
