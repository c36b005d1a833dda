import type { Traced } from '../../measure/index.ts';
import { asAsked } from '../as-asked.ts';
import type { Draft } from '../draft.ts';

/**
 * The place in the piece that a case fills, its top, edging and doors included: its least corner and its sizes, each
 * worked out when it is first asked for.
 */
export interface Site {
  readonly left: Traced;
  readonly front: Traced;
  readonly floor: Traced;
  readonly width: Traced;
  readonly height: Traced;
  readonly depth: Traced;
}

/** The whole of the piece, as it was asked for. */
export function wholePiece(draft: Draft): Site {
  const { piece } = draft;
  return asAsked<Site>({
    left: () => draft.nothing,
    front: () => draft.nothing,
    floor: () => draft.nothing,
    width: () => draft.field(piece, 'width'),
    height: () => draft.field(piece, 'height'),
    depth: () => draft.field(piece, 'depth'),
  });
}

/** A place so far from the beginning of a site; at its beginning, the distance itself where the site begins at nothing. */
export function within(draft: Draft, reason: string, begin: Traced, distance: Traced): Traced {
  return draft.isSome(begin) ? draft.ledger.sum(reason, begin, distance) : distance;
}
