import type { AdhesiveLot } from '../../job/index.ts';
import { ADHESIVES, GLUE_WORK } from '../../materials/index.ts';
import type { Joint } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { isCorner } from '../fold-work.ts';
import { glueOf } from '../setting-times.ts';
import { jointMm } from './glued-joints.ts';

/** How long a glue leaves, in minutes from the first stroke of the brush, and who says so. */
export interface GlueTime {
  readonly name: string;
  /** Its name in the table. */
  readonly kind: string;
  /** Until every clamp is on. */
  readonly assembly: number;
  readonly from: 'label' | 'table';
}

/** The time that the shop’s glue leaves: its label’s, or the least that is usual for its kind. */
export function glueTime(lots: readonly AdhesiveLot[]): GlueTime {
  const { lot, kind } = glueOf(lots);
  const told = lot?.label?.assemblyMinutes ?? lot?.label?.openMinutes;
  return {
    name: lot?.name ?? kind.name,
    kind: kind.name,
    assembly: told ?? kind.assemblyMinutes[0],
    from: told === undefined ? 'table' : 'label',
  };
}

/** Glues that leave at least so many minutes, by their names in the table, the quickest of them first. */
export function slowEnough(minutes: number): readonly string[] {
  return ADHESIVES.filter((a) => a.assemblyMinutes[0] >= minutes)
    .sort((a, b) => a.assemblyMinutes[0] - b.assemblyMinutes[0])
    .map((a) => a.name);
}

/** Minutes to glue a part in, clamps and all, for so many pairs of hands. */
export function minutesToGlue(bench: Bench, joints: readonly Joint[], clamps: number, hands: number): number {
  const metres = joints.reduce((sum, j) => sum + jointMm(bench, j) / 1000, 0);
  const pegs = joints.reduce((sum, j) => sum + (j.pegs?.length ?? 0), 0);
  return minutesOf({ parts: 1, joints: joints.length, metres, clamps, pegs }, hands);
}

/** What there is to do while the glue is open. */
interface GlueWork {
  /** Parts that are brought to others. */
  readonly parts: number;
  readonly joints: number;
  /** Length of all joints together. */
  readonly metres: number;
  readonly clamps: number;
  readonly pegs: number;
}

/** Minutes of so much work, for so many pairs of hands. */
export function minutesOf({ parts, joints, metres, clamps, pegs }: GlueWork, hands: number): number {
  const { minutesPerJoint, minutesPerMetre, minutesPerPart, minutesPerClamp, minutesPerPeg } = GLUE_WORK;
  const all =
    parts * minutesPerPart +
    joints * minutesPerJoint +
    metres * minutesPerMetre +
    clamps * minutesPerClamp +
    pegs * minutesPerPeg;
  return Math.ceil(all / hands);
}

/** Minutes for slopes to drink their first glue, once for all corners that are glued together; none when that is done. */
export function minutesForCorners(already: readonly Joint[], joints: readonly Joint[]): number {
  return joints.some(isCorner) && !already.some(isCorner) ? GLUE_WORK.minutesToDrink : 0;
}

/** Pairs of hands that can be had for a glue-up: two are as many as find room at it. */
export function handsFor(bench: Bench): number {
  return Math.min(2, Math.max(1, bench.job.shop.people.length));
}
