import type { Sourced } from './sourced.ts';

/** How much a material goes on bending under a load that stays, by service class (1 is a heated room). */
export interface CreepFactor extends Sourced {
  readonly id: string;
  readonly name: string;
  /** k_def for service classes 1, 2 and 3; undefined where the material isn't meant for the class. */
  readonly kDef: readonly [number, number | undefined, number | undefined];
}

const TABLE = 'EN 1995-1-1 Table 3.2';

/** Deformation factors k_def. */
export const CREEP_FACTORS: readonly CreepFactor[] = [
  { id: 'solid', name: 'solid wood', kDef: [0.6, 0.8, 2.0], source: TABLE, confirmed: true },
  { id: 'plywood', name: 'plywood', kDef: [0.8, 1.0, 2.5], source: TABLE, confirmed: true },
  {
    id: 'osb',
    name: 'OSB/3',
    kDef: [1.5, 2.25, undefined],
    source: `${TABLE}; from memory`,
    confirmed: false,
  },
  {
    id: 'particleboard',
    name: 'particleboard P4',
    kDef: [2.25, undefined, undefined],
    source: `${TABLE}; from memory`,
    confirmed: false,
  },
  {
    id: 'mdf',
    name: 'MDF',
    kDef: [2.25, undefined, undefined],
    source: `${TABLE}; from memory`,
    confirmed: false,
  },
];

/** The creep factors of a kind of material (`solid`, `plywood`, `mdf`, ...); undefined for an unknown kind. */
export function creepFactor(kind: string): CreepFactor | undefined {
  return CREEP_FACTORS.find((c) => c.id === kind);
}
