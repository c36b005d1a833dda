import type { UncutPart } from '../part.ts';
import type { SetOut } from '../set-out.ts';
import type { ExposedFace } from './exposed-faces.ts';

/** Surfaces that are finished alike. */
export const SURFACE_CLASSES = ['top', 'show', 'edges', 'inside', 'hidden'] as const;
export type SurfaceClass = (typeof SURFACE_CLASSES)[number];

/** A face so far behind the piece’s front is seen through an opening, mm (from memory). */
const INTO_THE_PIECE = 50;

/** What lies higher is out of hand’s reach, and nothing is set down there, mm (from memory). */
const WORN_BELOW = 1500;

/** The class of each face: by which way it looks, and whether it looks at another part. */
export function surfaceClass({
  joints,
  drawers,
}: Pick<SetOut, 'joints' | 'drawers'>): (face: ExposedFace<UncutPart>) => SurfaceClass {
  const bases = new Set(joints.filter((j) => j.duty === 'base').map((j) => j.part));
  const boxes = new Set(drawers.flatMap(({ parts: { face: _, ...box } }) => Object.values(box)));
  return ({ part, side, looks, gapMm, behindMm, highMm }) => {
    if (boxes.has(part.id)) return 'inside';
    const away = looks === '+y' || looks === '-z';
    if (side !== 'show' && side !== 'under')
      return looks === '-y' || (gapMm === undefined && !away) ? 'edges' : 'hidden';
    if (gapMm !== undefined) return bases.has(part.id) ? 'hidden' : 'inside';
    if (away) return 'hidden';
    if (looks === '+z') return highMm <= WORN_BELOW ? 'top' : 'show';
    return looks === '-y' && behindMm > INTO_THE_PIECE ? 'inside' : 'show';
  };
}
