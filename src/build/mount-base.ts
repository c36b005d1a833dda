import type { Part } from '../setting-out/index.ts';
import { baseJoints, baseTouches } from './base-touches.ts';
import type { Bench } from './bench.ts';
import { type CaseBox, marked } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import type { Standing } from './seating.ts';
import { setGroup } from './set-group.ts';

/** What cards call the base of a case. */
export function baseWords(box: CaseBox): string {
  return box.words === 'the case' ? 'base' : `base of ${box.words}`;
}

/** Brings a base that is together against the bottom of its case, and screws it there. */
export function mountBase(
  bench: Bench,
  standing: Standing,
  box: CaseBox,
  name: string,
  strips: readonly Part[],
): void {
  setGroup(
    bench,
    standing.into,
    name,
    `Set the ${baseWords(box)} against the bottom`,
    baseTouches(bench, strips, marked(box, 'B')[0]!, box.left),
    [
      'The case stays on its face: packing under the base brings it to its setback, clamps hold it against the bottom.',
    ],
    { length: '+x', width: '+y' },
  );
  for (const strip of strips) standing.add(strip);
  for (const j of baseJoints(bench, strips)) driveScrews(bench, standing.into, j);
}
