import type { CaseFrame } from './frame-of-case.ts';

/** Which of the lying panels run through at a case's corners; the sides run through at the others. */
export function runsThrough({ box, lidded }: CaseFrame): { readonly bottom: boolean; readonly lid: boolean } {
  return { bottom: box.bottom === 'under', lid: lidded && box.lid === 'over' };
}
