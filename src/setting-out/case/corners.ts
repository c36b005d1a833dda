import type { CaseFrame } from './frame-of-case.ts';

/** True for a case whose corners are mitred: neither panel runs past the other. */
export function isMitred({ joints }: Pick<CaseFrame, 'joints'>): boolean {
  return joints === 'mitre';
}

/** Which of the lying panels run through at a case's corners; the sides run through at the others. At a mitre both do. */
export function runsThrough(frame: CaseFrame): { readonly bottom: boolean; readonly lid: boolean } {
  const { box, lidded } = frame;
  const mitred = isMitred(frame);
  return { bottom: mitred || box.bottom === 'under', lid: lidded && (mitred || box.lid === 'over') };
}
