import { creepFactor } from '../materials/index.ts';

/** Where a piece stands: 1 a heated room, 2 an unheated one under a roof, 3 outdoors. */
export type ServiceClass = 1 | 2 | 3;

/**
 * Final sag over the sag at once: 1 + psi k_def, psi the share of the load that stays (1 for books and jars).
 * EN 1995-1-1, 2.2.3; the combination is from memory.
 */
export function finalFactor(kDef: number, staying = 1): number {
  return 1 + staying * kDef;
}

/** The final factor of a kind of material; undefined when it is in no table or not meant for the class. */
export function finalFactorOf(kind: string, serviceClass: ServiceClass, staying = 1): number | undefined {
  const kDef = creepFactor(kind)?.kDef[serviceClass - 1];
  return kDef === undefined ? undefined : finalFactor(kDef, staying);
}
