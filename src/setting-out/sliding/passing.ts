import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/**
 * What stands out of a door so far that no door before it passes: from its left edge, where another must stop that comes
 * from the left, and where one that comes from the right.
 */
export interface Barred {
  readonly from: Traced;
  readonly to: Traced;
}

/** Doors in a row: which track each runs in, counted from the front, and what bars those before it. */
export interface Row {
  readonly width: Traced;
  readonly trackOf: readonly number[];
  readonly barred: readonly (Barred | undefined)[];
}

/**
 * How much further right than an earlier door one must stand at least; undefined where it may stand anywhere. Doors keep
 * their order: those of one track can't pass, and what stands out of a door stops those before it on its own side.
 */
export function leastAfter(
  draft: Draft,
  { width, trackOf, barred }: Row,
  earlier: number,
  later: number,
): Traced | undefined {
  const l = draft.ledger;
  const [first, second] = [trackOf[earlier]!, trackOf[later]!];
  if (first === second) return width;
  const behind = first > second ? barred[earlier] : barred[later];
  if (!behind) return undefined;
  return first > second ? behind.to : l.less('up to what stands out of the door behind', width, behind.from);
}

/** The width that all doors take up when they are pushed to one end. */
export function pushedTogether(draft: Draft, row: Row): Traced {
  const l = draft.ledger;
  const places: Traced[] = [];
  row.trackOf.forEach((_, later) => {
    const least = places.flatMap((at, earlier) => {
      const after = leastAfter(draft, row, earlier, later);
      return after === undefined ? [] : [l.sum('where it must stop', at, after)];
    });
    places.push(
      least.length === 0 ? draft.nothing : l.greatest('as far as others let it', draft.nothing, ...least),
    );
  });
  return l.greatest(
    'all doors pushed to one end',
    ...places.map((at) => l.sum('its other edge', at, row.width)),
  );
}
