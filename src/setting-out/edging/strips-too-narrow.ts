import type { Lot, RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** Strips on the edges of boards: who names their lot and in which field, and how a sentence speaks of the boards. */
export interface StripsOnBoards {
  readonly record: RecordOf<'edging' | 'top'>;
  readonly field: 'strip' | 'edging';
  readonly lot: Lot;
  readonly thickness: Traced;
  /** `the panels are`. */
  readonly boardsAre: string;
  /** `the panels’`. */
  readonly boards: string;
}

/** True for strips that are narrower than their boards are thick, which a stop says once for every record. */
export function stripsTooNarrow(draft: Draft, on: StripsOnBoards): boolean {
  const { record, field, lot, thickness } = on;
  const l = draft.ledger;
  const width = draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!);
  if (l.ticks(width) >= l.ticks(thickness)) return false;
  if (!draft.snags.some((s) => s.code === 'edging.too-narrow' && s.where.record === record.id))
    draft.stop(
      'edging.too-narrow',
      record,
      field,
      `Strips “${lot.id}” are narrower than ${on.boardsAre} thick.`,
      { says: `Choose strips at least as wide as ${on.boards} thickness.` },
    );
  return true;
}
