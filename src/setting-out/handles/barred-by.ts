import type { RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT, SLIDING } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Barred } from '../sliding/passing.ts';
import { fromEdge, sizeAcross } from './from-edge.ts';

/**
 * The stretch of a sliding door, from its left edge, that its handle bars for doors before it; undefined where it has
 * none, or one so low that doors pass it.
 */
export function barredBy(
  draft: Draft,
  doors: RecordOf<'sliding-doors'>,
  opens: 'left' | 'right',
  width: Traced,
  gap: Traced,
  overlap: Traced,
): Barred | undefined {
  const record = draft.tree.childOf(doors.id, 'handle');
  if (!record) return undefined;
  const l = draft.ledger;
  const lot = draft.lot(record.strip);
  const out = l.ticks(draft.thickness(lot)) + l.ticks(l.row(SLIDING.handlePasses));
  if (out <= l.ticks(gap)) return undefined;
  const size = sizeAcross(draft, record, record.lay ?? 'up');
  const aside = fromEdge(draft, record, size, overlap);
  const middle = opens === 'left' ? aside : l.less('middle of the handle, from the other edge', width, aside);
  const half = l.sum(
    'half its width, and clear of it',
    l.ratio('half its width', size, SETTING_OUT.half),
    l.row(HANDLES.passes),
  );
  return {
    from: l.less('where a door from the left must stop', middle, half),
    to: l.sum('where a door from the right must stop', middle, half),
  };
}
