import type { RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/**
 * From the edge of a door that opens to the middle of its handle, `size` wide across: as asked, or by the trade. Sliding doors
 * that lap keep their handles clear of the lap.
 */
export function fromEdge(draft: Draft, record: RecordOf<'handle'>, size: Traced, overlap?: Traced): Traced {
  if (record.fromEdge !== undefined) return draft.field(record, 'fromEdge');
  const l = draft.ledger;
  if (overlap === undefined) return l.row(HANDLES.fromEdge);
  const half = l.ratio('half its width', size, SETTING_OUT.half);
  const clear = l.sum('clear of where the doors lap', overlap, half, l.row(HANDLES.passes));
  return l.round(
    'as it is marked',
    l.greatest('from the edge to the handle', l.row(HANDLES.fromEdge), clear),
    l.row(SETTING_OUT.setStep),
    'up',
  );
}

/** How wide a handle is across its door. */
export function sizeAcross(draft: Draft, record: RecordOf<'handle'>, lay: 'across' | 'up'): Traced {
  const lot = draft.lot(record.strip);
  if (lay === 'up') return draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!);
  return record.length === undefined ? draft.ledger.row(HANDLES.long) : draft.field(record, 'length');
}
