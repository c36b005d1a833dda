import type { DraftPart } from '../draft.ts';

/** Mitres one end of a strip that is glued to an edge, where it meets the next strip. */
export function mitredTip(strip: DraftPart, edge: 'start' | 'end', neighbour: string): void {
  strip.features.push({
    kind: 'bevel',
    id: `${strip.id}#${edge}`,
    purpose: `mitre with the ${neighbour} strip`,
    edge,
    angle: 45,
    fullFace: 'show',
  });
}
