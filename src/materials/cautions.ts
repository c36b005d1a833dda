import type { Sourced } from './sourced.ts';

/** A caution for a step card. */
export interface Caution extends Sourced {
  readonly id: string;
  readonly says: string;
}

/** Cautions that belong to a kind of work. They don't stand in for the machine's own instructions. */
export const CAUTIONS: readonly Caution[] = [
  {
    id: 'wood-dust',
    says: 'Wood dust harms the lungs, and oak and beech dust can cause cancer: use extraction and wear a mask.',
    source: 'NIOSH Pocket Guide (1 mg/m3); ACGIH classes of wood dust',
    confirmed: true,
  },
  {
    id: 'circular-saw',
    says: 'Wear eye and ear protection. See that the lower guard closes by itself, and unplug the saw to set it.',
    source: '29 CFR 1917.51 (guards of portable circular saws)',
    confirmed: true,
  },
  {
    id: 'table-saw',
    says: 'Keep the guard and the riving knife on, stand out of line with the blade and use a push stick.',
    source: '29 CFR 1910.213(c); from memory',
    confirmed: false,
  },
  {
    id: 'router',
    says: 'Wear eye and ear protection, feed against the turning of the bit and unplug the router to change it.',
    source: 'common practice',
    confirmed: false,
  },
  {
    id: 'drill',
    says: 'Wear eye protection and clamp the work before you drill it.',
    source: 'common practice',
    confirmed: false,
  },
  {
    id: 'noise',
    says: 'Saws and routers are louder than 85 dB(A): wear ear protection.',
    source: 'NIOSH 98-126; from memory',
    confirmed: false,
  },
  {
    id: 'oily-cloths',
    says: 'Cloths wet with drying oil can set themselves on fire: dry them flat outdoors, or keep them in water in a closed metal can.',
    source: '29 CFR 1926.252(e); fire service practice',
    confirmed: true,
  },
];

/** A caution by its id (`circular-saw`); undefined when it isn't in the table. */
export function caution(id: string): Caution | undefined {
  return CAUTIONS.find((c) => c.id === id);
}
