import type { Lot, RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, PanelSpec, Triple } from '../draft.ts';
import { glueStrip, mitre } from '../joints/strip-joints.ts';
import { axisOf, type Direction } from '../place.ts';
import { mitredTip } from './mitred-tip.ts';
import { stripsTooNarrow } from './strips-too-narrow.ts';

/** An edge of a door or a drawer's front, seen from the front. */
export type EdgeSide = Exclude<NonNullable<RecordOf<'edging'>['sides']>[number], 'front'>;

/** What edges a door or a drawer's front, and where. */
export interface FrontEdges {
  readonly record: RecordOf<'edging'>;
  readonly lot: Lot;
  readonly thickness: Traced;
  readonly sides: readonly EdgeSide[];
}

/** Where something is, and how large. */
export interface Extent {
  readonly at: Triple;
  readonly size: Triple;
}

/** How a strip lies on each edge: its show face looks outward, its width runs backward; going round, one ends where the next begins. */
const LIES: Readonly<
  Record<EdgeSide, { readonly length: Direction; readonly start: EdgeSide; readonly end: EdgeSide }>
> = {
  upper: { length: '+x', start: 'left', end: 'right' },
  right: { length: '-z', start: 'upper', end: 'lower' },
  lower: { length: '-x', start: 'right', end: 'left' },
  left: { length: '+z', start: 'lower', end: 'upper' },
};

const ROUND: readonly EdgeSide[] = ['upper', 'right', 'lower', 'left'];

/** Tape goes on above and below first: that at the sides covers its ends. */
const TAPED: readonly EdgeSide[] = ['upper', 'lower', 'right', 'left'];

/** The edging of a record of doors or drawers; undefined where they have none. */
export function edgesOf(draft: Draft, record: string): FrontEdges | undefined {
  const edging = draft.tree.childOf(record, 'edging');
  if (!edging) return undefined;
  const lot = draft.lot(edging.strip);
  const order = lot.tape === undefined ? ROUND : TAPED;
  const sides = order.filter((s) => edging.sides?.includes(s) ?? true);
  return { record: edging, lot, thickness: draft.thickness(lot), sides };
}

/** What is left for the board inside its edging. */
export function insideEdges(draft: Draft, edges: FrontEdges | undefined, { at, size }: Extent): Extent {
  if (!edges) return { at, size };
  const l = draft.ledger;
  const of = (...sides: EdgeSide[]) =>
    edges.sides.filter((s) => sides.includes(s)).map(() => edges.thickness);
  const from = (t: Traced, side: EdgeSide) =>
    of(side).length ? l.sum('inside its edging', t, ...of(side)) : t;
  const less = (t: Traced, taken: readonly Traced[]) =>
    taken.length ? l.less('size of the board, inside its edging', t, ...taken) : t;
  return {
    at: [from(at[0], 'left'), at[1], from(at[2], 'lower')],
    size: [less(size[0], of('left', 'right')), size[1], less(size[2], of('upper', 'lower'))],
  };
}

/** Says that edging leaves nothing of the board of a door or a drawer’s front. */
export function edgingLeavesNothing(draft: Draft, code: string, edges: FrontEdges, of: string): void {
  draft.stop(code, edges.record, 'strip', `The edging leaves no board of ${of}.`, {
    says: 'Edge it with thinner strips, or make its opening larger.',
  });
}

/** Edges a board within the extent that it and its edging fill together. Solid strips are mitred where two meet. */
export function edgeFront(
  draft: Draft,
  edges: FrontEdges | undefined,
  board: DraftPart,
  whole: Extent,
): void {
  if (!edges) return;
  const { record, lot } = edges;
  const { thickness } = board;
  const words = { boardsAre: `the ${board.name} is`, boards: 'the board’s' };
  if (stripsTooNarrow(draft, { record, field: 'strip', lot, thickness, ...words })) return;
  const strips = new Map<EdgeSide, DraftPart>();
  for (const side of edges.sides) strips.set(side, stripOn(draft, edges, board, whole, side));
  for (const strip of strips.values()) glueStrip(draft, strip, board);
  if (edges.lot.tape === undefined)
    for (const [side, strip] of strips) {
      const next = strips.get(LIES[side].end);
      if (next) mitre(draft, strip, next);
    }
  draft.edged.set(board.id, strips);
}

function stripOn(
  draft: Draft,
  edges: FrontEdges,
  board: DraftPart,
  { at, size }: Extent,
  side: EdgeSide,
): DraftPart {
  const l = draft.ledger;
  const { record, lot, thickness, sides } = edges;
  const lies = side === 'upper' || side === 'lower';
  const tape = lot.tape !== undefined;
  // Tape above and below ends where the board does; all else runs the whole way.
  const across = axisOf(board.place.length).axis === 0 ? board.length : board.width;
  const [x, wide] = lies && tape ? [board.box.min[0], across] : [at[0], size[0]];
  const inner = (axis: 0 | 2) => board.box.max[axis];
  const corner: Triple = [
    side === 'right' ? inner(0) : lies ? x : at[0],
    at[1],
    side === 'upper' ? inner(2) : at[2],
  ];
  const extent: Triple = lies ? [wide, size[1], thickness] : [thickness, size[1], size[2]];
  const along = lies ? wide : size[2];
  const { length, start, end } = LIES[side];
  const mitred = (
    [
      ['start', start],
      ['end', end],
    ] as const
  ).filter(([, n]) => !tape && sides.includes(n));
  const allowance = l.row(mitred.length ? SETTING_OUT.mitreAllowance : SETTING_OUT.edgingAllowance);
  const spec: PanelSpec = {
    record: record.id,
    role: `${side}-on:${board.id}`,
    name: `${side} edging for ${board.name}`,
    family: 'edging',
    lot,
    at: corner,
    size: extent,
    length,
    width: '+y',
    rough: {
      length: l.sum('length to cut before trimming', along, allowance, allowance),
      width: draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!),
      thickness,
    },
  };
  const strip = draft.panel(spec);
  for (const [edge, neighbour] of mitred) mitredTip(strip, edge, neighbour);
  return strip;
}
