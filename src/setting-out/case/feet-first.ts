import { sideLooking } from '../joints/contact.ts';
import type { UncutPart } from '../part.ts';

/**
 * Whether feet can go under a bottom while it lies loose, where a driver reaches every screw. Not where pockets or heads under it wait
 * for screws that come later, and not under one that is folded up with its sides.
 */
export function takesFeetFirst({ features, place }: Pick<UncutPart, 'features' | 'place'>): boolean {
  const under = sideLooking(place, '-z');
  const folded =
    features.some((f) => f.kind === 'bevel') &&
    !features.some((f) => f.kind === 'biscuit-slot' || f.kind === 'spline-groove');
  const screwed = features.some(
    (f) => f.kind === 'pocket' || (f.kind === 'hole' && f.use === 'clearance' && f.side === under),
  );
  return !folded && !screwed;
}
