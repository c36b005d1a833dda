import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bounded } from '../spaces/openings.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** The panels round a back: those of its case, or what bounds its bay. Below and above stand only what it ends at. */
export interface BackBounds extends Pick<Bounded, 'left' | 'right'> {
  /** The fixed shelf that a back ends at behind it; absent where it runs on past the case’s own bottom or lid. */
  readonly below?: DraftPart;
  readonly above?: DraftPart;
}

/** What bounds the back of a bay: the uprights beside it, or the fixed shelves below and above it. */
export function boundsOfBay(bay: Bounded, bottom: DraftPart, lid: DraftPart | undefined): BackBounds {
  const { left, right, below, above } = bay;
  return {
    left,
    right,
    ...(below === bottom ? {} : { below }),
    ...(above && above !== lid ? { above } : {}),
  };
}

/** Where a back of a bay begins that ends over the back edge of a parting: at the one before, else at the parting’s own face. */
export function beginsOver(
  draft: Draft,
  frame: CaseFrame,
  back: RecordOf<'back'>,
  parting: DraftPart,
  axis: 0 | 2,
): Traced {
  const before = neighbourOf(draft, frame, back, -1);
  return before ? draft.part(`${before.id}/back`).box.max[axis] : parting.box.min[axis];
}

/**
 * Where it ends over the back edge of a parting: in its middle where the next bay has a back as well, so that it is as long
 * from its start as the saw is set; else over all of it.
 */
export function endsOver(
  draft: Draft,
  frame: CaseFrame,
  back: RecordOf<'back'>,
  parting: DraftPart,
  { axis, start }: { readonly axis: 0 | 2; readonly start: Traced },
): Traced {
  if (!neighbourOf(draft, frame, back, 1)) return parting.box.max[axis];
  const l = draft.ledger;
  const half = l.ratio('half of the parting', parting.thickness, SETTING_OUT.half);
  const middle = l.sum('middle of the parting, where two backs meet', parting.box.min[axis], half);
  return l.sum(
    'where it ends',
    start,
    draft.asSawn(l.less('from its start to there', middle, start), 'down'),
  );
}

/** The back of the next bay, or of the one before; undefined where there is none. */
function neighbourOf(
  draft: Draft,
  frame: CaseFrame,
  back: RecordOf<'back'>,
  step: 1 | -1,
): RecordOf<'back'> | undefined {
  const bay = draft.tree.get(back.parent);
  if (bay?.kind !== 'opening') return undefined;
  const bays = draft.tree.childrenOf(bay.parent, 'opening');
  const next = bays[bays.indexOf(bay) + step];
  return next && frame.backs.find((b) => b.parent === next.id);
}
