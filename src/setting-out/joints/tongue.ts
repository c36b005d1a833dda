import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { axisOf, type Direction } from '../place.ts';
import { sideLooking } from './contact.ts';
import { depthIn } from './let-in.ts';

/** What of a panel's end goes into a channel: all of its thickness, or a tongue that a rabbet leaves of it. */
export interface EndLetIn {
  readonly low: Traced;
  readonly thickness: Traced;
}

/**
 * Rabbets a panel's end so that half of its thickness is left as a tongue. At a corner the tongue is on the inner side, so
 * that wood is left beyond its dado; else it is the upper or the right half.
 */
export function cutTongue(
  draft: Draft,
  part: DraftPart,
  end: 'start' | 'end',
  mate: DraftPart,
  depth: Traced,
  flush: 'start' | 'end' | undefined,
): EndLetIn {
  const l = draft.ledger;
  const { axis } = axisOf(part.place.thickness);
  const thickness = depthIn(draft, 'thickness of the tongue', part.thickness, SETTING_OUT.tongue);
  const off = l.less('depth of the rabbet beside the tongue', part.thickness, thickness);
  const cutLow = flush !== 'end';
  part.features.push({
    kind: 'rabbet',
    id: `${part.id}#${mate.id}`,
    purpose: `for the dado in the ${mate.name}`,
    face: sideLooking(part.place, `${cutLow ? '-' : '+'}${'xyz'[axis]}` as Direction) as Face,
    edge: end,
    width: depth,
    depth: off,
    from: draft.nothing,
    to: part.width,
  });
  const low = part.box.min[axis];
  return { low: cutLow ? l.sum('nearer side of the tongue', low, off) : low, thickness };
}
