import type { RecordOf } from '../../job/index.ts';
import { HANDLES, SETTING_OUT, SLIDING } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Barred } from '../sliding/passing.ts';
import { sizeAcross } from './from-edge.ts';
import { layOn, placesOn } from './places-on-front.ts';

/**
 * The stretch of a sliding door, from its left edge, that its handles bar for doors before it: from the first to the last;
 * undefined where it has none, or ones so low that doors pass them.
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
  const size = sizeAcross(draft, record, layOn(record, { opens }));
  const middles = placesOn(draft, record, { opens, overlap }, 'across', width).map(({ from, off }) =>
    from === 'low' ? off : l.less('middle of the handle, from the other edge', width, off),
  );
  const half = l.sum(
    'half its width, and clear of it',
    l.ratio('half its width', size, SETTING_OUT.half),
    l.row(HANDLES.passes),
  );
  return {
    from: l.less('where a door from the left must stop', middles[0]!, half),
    to: l.sum('where a door from the right must stop', middles.at(-1)!, half),
  };
}
