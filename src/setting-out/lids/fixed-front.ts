import type { RecordOf } from '../../job/index.ts';
import { LIDS } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';

/** What is open between a fixed front and the lid: as asked, or wide enough for fingers. */
export function gapUnderLid(draft: Draft, record: RecordOf<'front'>): Traced {
  return record.gap === undefined ? draft.ledger.row(LIDS.fingerGap) : draft.field(record, 'gap');
}

/** A fixed front between the sides, on the bottom, level with the front of both; its pockets look inside. */
export function fixedFront(draft: Draft, frame: CaseFrame, panels: CasePanels): DraftPart | undefined {
  const record = draft.tree.childOf(frame.box.id, 'front');
  if (!record) return undefined;
  const l = draft.ledger;
  const { inside } = panels;
  const height = l.less('height of the front, open under the lid', inside.height, gapUnderLid(draft, record));
  if (!draft.isSome(height)) {
    draft.stop('lids.no-front', record, 'gap', 'The gap under the lid leaves nothing of the front.', {
      says: 'Make the gap smaller.',
    });
    return undefined;
  }
  const lot = draft.lot(record.board ?? frame.box.board);
  return draft.panel({
    record: record.id,
    role: 'front',
    name: 'front',
    family: 'divider',
    lot,
    at: [inside.left, frame.panelFront, inside.floor],
    size: [inside.width, draft.thickness(lot), height],
    length: '+x',
    // The show face looks to the front.
    width: '+z',
    between: true,
  });
}
