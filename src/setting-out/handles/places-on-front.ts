import { FROM_SIDES, type RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { fromEdge, sizeAcross } from './from-edge.ts';

type OnFront = RecordOf<'handle' | 'pull'>;
type Way = 'across' | 'up';

/** A place along one way of a front: so far from its left or lower side (`low`), or from the other. */
export interface Place {
  readonly from: 'low' | 'high';
  readonly off: Traced;
}

/** What of a front its handles are placed by. */
export interface Front {
  /** The edge that opens, where it has one. */
  readonly opens?: 'left' | 'right' | 'upper' | 'lower' | undefined;
  /** How far it laps those beside it, where it slides. */
  readonly overlap?: Traced | undefined;
  /** Set where it mirrors the door to its left. */
  readonly mirrored?: boolean;
  /** From its left or lower side to the middle of what its row stands about. */
  readonly about?: Traced | undefined;
}

/** Which way several stand in a row on a front: as asked, else along the edge that opens, and across on a drawer. */
export function rowOn(record: OnFront, { opens }: Front): Way {
  return record.row ?? sideways(opens);
}

/** Which way each runs: as asked, else upward on a door, and across on a drawer or on what opens upward or downward. */
export function layOn(record: OnFront, { opens }: Front): Way {
  return record.lay ?? sideways(opens);
}

function sideways(opens: Front['opens']): Way {
  return opens === 'left' || opens === 'right' ? 'up' : 'across';
}

/** The middles of all handles of a front along one way, the lowest or leftmost first; `whole` is its size that way. */
export function placesOn(
  draft: Draft,
  record: OnFront,
  front: Front,
  way: Way,
  whole: Traced,
): readonly Place[] {
  const side = sideOf(record, front, way);
  const count = rowOn(record, front) === way ? (record.count ?? 1) : 1;
  if (count === 1) return [placeOfOne(draft, record, front, way, whole, side)];
  if (record.apart !== undefined) return soFarApart(draft, record, front, whole, count, side);
  return side === 'both' ? between(draft, record, front, way, whole, count) : inShares(draft, whole, count);
}

/** A side that places are measured from, and the field that says so. */
type Side = { readonly from: Place['from']; readonly field: keyof OnFront & string } | 'both' | undefined;

/** The side of a front that the maker measured from; `both`, or none. */
function sideOf(record: OnFront, front: Front, way: Way): Side {
  const [low, high] = fieldsAlong(front, way);
  if (record[low] !== undefined && record[high] !== undefined) return 'both';
  if (record[low] !== undefined) return { from: 'low', field: low };
  if (record[high] !== undefined) return { from: 'high', field: high };
  const edge = edgeAlong(front, way);
  return edge && record.fromEdge !== undefined ? { from: edge, field: 'fromEdge' } : undefined;
}

/** The fields of both sides along a way, exchanged from left to right in a mirror. */
function fieldsAlong(front: Front, way: Way): (typeof FROM_SIDES)[0 | 2] {
  const [low, high] = FROM_SIDES[way === 'across' ? 0 : 2];
  return (way === 'across' && front.mirrored ? [high, low] : [low, high]) as (typeof FROM_SIDES)[0];
}

/** Where the edge that opens lies along a way, if it does. */
function edgeAlong({ opens }: Front, way: Way): Place['from'] | undefined {
  const edges = way === 'across' ? (['left', 'right'] as const) : (['lower', 'upper'] as const);
  return opens === edges[0] ? 'low' : opens === edges[1] ? 'high' : undefined;
}

function marked(draft: Draft, t: Traced): Traced {
  const l = draft.ledger;
  return l.round('as it is marked', t, l.row(SETTING_OUT.setStep), 'nearest');
}

function placeOfOne(draft: Draft, record: OnFront, front: Front, way: Way, whole: Traced, side: Side): Place {
  if (side && side !== 'both') return { from: side.from, off: draft.field(record, side.field as 'fromLeft') };
  const edge = edgeAlong(front, way);
  if (edge) return { from: edge, off: byTheTrade(draft, record, front) };
  if (front.about !== undefined && rowOn(record, front) === way) return { from: 'low', off: front.about };
  const half = way === 'up' ? 'half its height' : 'half its width';
  return { from: 'low', off: draft.ledger.ratio(half, whole, SETTING_OUT.half) };
}

/** From the edge that opens, where nothing is said. */
function byTheTrade(draft: Draft, record: OnFront, front: Front): Traced {
  return record.kind === 'handle'
    ? fromEdge(draft, record, sizeAcross(draft, record, layOn(record, front)), front.overlap)
    : draft.ledger.row(HANDLES.fromEdge);
}

/** So far apart: from the one nearest to a side, or about a middle. */
function soFarApart(
  draft: Draft,
  record: OnFront,
  front: Front,
  whole: Traced,
  count: number,
  side: Side,
): readonly Place[] {
  const l = draft.ledger;
  const apart = draft.field(record, 'apart');
  const half = l.ratio(
    'half of the row',
    l.times('from the first to the last', apart, count - 1),
    SETTING_OUT.half,
  );
  const { from, to, toMiddle } =
    side && side !== 'both'
      ? { from: side.from, to: draft.field(record, side.field as 'fromLeft'), toMiddle: !!record.measured }
      : {
          from: 'low' as const,
          to: front.about ?? l.ratio('half way', whole, SETTING_OUT.half),
          toMiddle: true,
        };
  const first = toMiddle ? l.less('the first of the row', to, half) : to;
  const places = Array.from({ length: count }, (_, i) => ({
    from,
    off: i === 0 ? first : l.sum('the next of the row', first, l.times('as far apart', apart, i)),
  }));
  return from === 'low' ? places : places.reverse();
}

/** The first and the last so far from both sides, the others equally spaced between. */
function between(
  draft: Draft,
  record: OnFront,
  front: Front,
  way: Way,
  whole: Traced,
  count: number,
): readonly Place[] {
  const l = draft.ledger;
  const [low, high] = fieldsAlong(front, way);
  const [first, last] = [draft.field(record, low), draft.field(record, high)];
  const run = l.less('from the first to the last', whole, first, last);
  const steps = Array.from({ length: count - 1 }, () => 1);
  return Array.from({ length: count }, (_, i): Place => {
    if (i === 0) return { from: 'low', off: first };
    if (i === count - 1) return { from: 'high', off: last };
    const before = steps.slice(0, i).map((_s, k) => l.share('an equal step', run, steps, k));
    return { from: 'low', off: l.sum('the next of the row', first, ...before) };
  });
}

/**
 * Each in the middle of its own share of the front: two at its quarter points. They are marked from the front's middle, to
 * both sides alike.
 */
function inShares(draft: Draft, whole: Traced, count: number): readonly Place[] {
  const l = draft.ledger;
  const half = l.ratio('half way', whole, SETTING_OUT.half);
  return Array.from({ length: count }, (_, i): Place => {
    const fromLow = 2 * i < count;
    const n = 2 * (fromLow ? i : count - 1 - i) + 1;
    const share = l.share('to the middle of its share of the front', whole, [n, 2 * count - n], 0);
    const aside = marked(draft, l.less('from the middle of the front', half, share));
    return { from: fromLow ? 'low' : 'high', off: l.less('from its side', half, aside) };
  });
}
