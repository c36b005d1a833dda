import { isSolid, SCREW_DISTANCES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type Axis, axisOf } from '../place.ts';

/** How far screws of a row stay from the ends of a part that they run along; undefined in a sheet, where the duty's own rule counts. */
export function fromEnds(draft: Draft, part: DraftPart, along: Axis, diameter: Traced): Traced | undefined {
  if (!isSolid(draft.lot(part.lot).material)) return undefined;
  const grain = axisOf(part.place.length).axis === along;
  return draft.ledger.ratio(
    grain ? 'from the end of the grain to the screw' : 'from the side of the wood to the screw',
    diameter,
    grain ? SCREW_DISTANCES.solidEnd : SCREW_DISTANCES.solidSide,
  );
}
