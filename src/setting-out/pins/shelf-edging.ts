import type { Lot, RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { stripsTooNarrow } from '../edging/strips-too-narrow.ts';
import { glueStrip } from '../joints/strip-joints.ts';

/** What edges the loose shelves of an opening in front. */
interface ShelfEdge {
  readonly record: RecordOf<'edging'>;
  readonly lot: Lot;
  readonly thickness: Traced;
}

/** The edging of loose shelves; undefined where they have none. */
export function edgeOf(draft: Draft, shelves: RecordOf<'pins'>): ShelfEdge | undefined {
  const record = draft.tree.childOf(shelves.id, 'edging');
  if (!record) return undefined;
  const lot = draft.lot(record.strip);
  return { record, lot, thickness: draft.thickness(lot) };
}

/** Edges a loose shelf along its front, over its whole length. */
export function edgeShelf(draft: Draft, shelves: RecordOf<'pins'>, shelf: DraftPart): void {
  const edge = edgeOf(draft, shelves);
  if (!edge) return;
  const l = draft.ledger;
  const { record, lot, thickness } = edge;
  const width = draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!);
  const words = { boardsAre: 'the loose shelves are', boards: 'the shelves’' };
  if (stripsTooNarrow(draft, { record, field: 'strip', lot, thickness: shelf.thickness, ...words })) return;
  const allowance = l.row(SETTING_OUT.edgingAllowance);
  const [x, y, z] = shelf.box.min;
  const strip = draft.panel({
    record: record.id,
    role: `on:${shelf.id}`,
    name: `edging for ${shelf.name}`,
    family: 'edging',
    lot,
    at: [x, l.less('front of the edging', y, thickness), z],
    size: [shelf.length, thickness, shelf.thickness],
    length: '+x',
    // The show face looks to the front.
    width: '+z',
    rough: {
      length: l.sum('length to cut before trimming', shelf.length, allowance, allowance),
      width,
      thickness,
    },
  });
  glueStrip(draft, strip, shelf);
}
