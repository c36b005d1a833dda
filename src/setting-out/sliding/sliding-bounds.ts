import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import type { Space } from '../spaces/openings.ts';

/** What sliding doors stand before: its bays, its ends, and the panels round it. */
export interface Bounds {
  readonly bays: readonly Space[];
  readonly left: Traced;
  readonly right: Traced;
  readonly floor: Traced;
  readonly width: Traced;
  readonly height: Traced;
  readonly below: DraftPart;
  readonly above: DraftPart;
  readonly start: DraftPart;
  readonly end: DraftPart;
}

/** Finds what doors stand before; undefined where that could not be set out, which has said so itself. */
export function boundsOf(
  draft: Draft,
  closed: ClosedSpaces,
  record: RecordOf<'sliding-doors'>,
  top: DraftPart | undefined,
): Bounds | undefined {
  const l = draft.ledger;
  const found = record.over.map((id) => closed.get(id));
  if (!found.every((s) => s !== undefined)) return undefined;
  const bays = [...found].sort(
    (a, b) => l.ticks(a.at[0]) - l.ticks(b.at[0]) || l.ticks(a.at[2]) - l.ticks(b.at[2]),
  );
  const first = bays[0]!;
  const last = bays.at(-1)!;
  const above = last.above ?? top;
  if (!above) return undefined;
  const right = l.sum('right end of the opening', last.at[0], last.size[0]);
  const upper = l.sum('upper end of the opening', last.at[2], last.size[2]);
  return {
    bays,
    left: first.at[0],
    right,
    floor: first.at[2],
    width: l.less('clear width of what the doors close', right, first.at[0]),
    height: l.less('clear height of what the doors close', upper, first.at[2]),
    below: first.below,
    above,
    start: first.left,
    end: last.right,
  };
}
