import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';
import { material } from './material.ts';

const NDS = 'NDS 2018 commentary Table C12.1.5.7, from memory';

/**
 * How far a screw stays from the ends and sides of the wood that its thread is in. In solid wood it is so many times the
 * screw's diameter, more along the grain than across it; in a panel's edge it is a length, whatever the screw.
 */
export const SCREW_DISTANCES = {
  solidEnd: ratio(
    'screws.solid.end',
    [10, 1],
    'in solid wood a screw stays 10 diameters from the end of the grain',
  ),
  solidSide: ratio('screws.solid.side', [5, 2], 'in solid wood a screw stays 2.5 diameters from a side'),
  solidAlong: ratio(
    'screws.solid.along',
    [10, 1],
    'screws in a row along the grain stand 10 diameters apart',
  ),
  solidAcross: ratio(
    'screws.solid.across',
    [5, 1],
    'screws in a row across the grain stand 5 diameters apart',
  ),
  panelCorner: {
    id: 'screws.panel.corner',
    value: fromMm(25),
    says: 'a screw into a panel’s edge stays at least 25 mm from the panel’s corner',
    source: 'common practice',
  } satisfies LengthRow as LengthRow,
} as const;

function ratio(id: string, of: readonly [number, number], says: string): RatioRow {
  return { id, of, says, source: NDS };
}

/** True for wood with one grain; a sheet has layers, and splits less along any. */
export function isSolid(materialId: string): boolean {
  return material(materialId)?.kind === 'solid';
}
