import type { CaseFrame } from './frame-of-case.ts';

/** True where a back slides into grooves, before what closes the case above. */
export function hasSlidBack({ backs }: Pick<CaseFrame, 'backs'>): boolean {
  return backs.some((b) => b.fitting === 'groove');
}
