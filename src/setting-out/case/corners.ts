import { runsPast } from '../../job/index.ts';
import type { CaseFrame } from './frame-of-case.ts';
import type { Hand } from './shared-sides.ts';

/** True for a case whose corners are mitred: neither panel runs past the other. */
export function isMitred({ joints }: Pick<CaseFrame, 'joints'>): boolean {
  return joints === 'mitre';
}

/** Whether a lying panel runs through at its corner with the left side, and at the one with the right. */
export type AtCorners = Readonly<Record<Hand, boolean>>;

/** At which of a case's corners the lying panels run through; the sides run through at the others. At a mitre both do. */
export function runsThrough(frame: CaseFrame): Readonly<Record<'bottom' | 'lid', AtCorners>> {
  const { box, lidded } = frame;
  const mitred = isMitred(frame);
  const at = (flat: 'bottom' | 'lid', hand: Hand) => mitred || runsPast(box, flat, hand);
  return {
    bottom: { left: at('bottom', 'left'), right: at('bottom', 'right') },
    lid: { left: lidded && at('lid', 'left'), right: lidded && at('lid', 'right') },
  };
}

/** True for a panel that runs through somewhere: it is as deep as the sides, and what it lies under or over ends at it. */
export function runsSomewhere({ left, right }: AtCorners): boolean {
  return left || right;
}

/** True where a lying panel ends at one side, and runs past the other. */
export function endsAtSide(at: AtCorners, hand: Hand): boolean {
  return runsSomewhere(at) && !at[hand];
}
