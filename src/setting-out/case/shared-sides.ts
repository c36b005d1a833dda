import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { inPart } from '../joints/contact.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { hasSlidBack } from './slid-back.ts';

export type Hand = 'left' | 'right';

/** A side of a case: the case that it belongs to, and whether two cases close on it. */
export interface SideOfCase {
  readonly of: RecordOf<'case'>;
  readonly shared: boolean;
}

const OTHER = { left: 'right', right: 'left' } as const;

/** Both sides of a case. */
export function sidesOfCase(draft: Draft, box: RecordOf<'case'>): Readonly<Record<Hand, SideOfCase>> {
  const side = (hand: Hand): SideOfCase => {
    const mate = draft.tree.neighbourOf(box, hand);
    if (mate && box[`${hand}Side`] === 'shared') return { of: mate, shared: true };
    return { of: box, shared: mate?.[`${OTHER[hand]}Side`] === 'shared' };
  };
  return { left: side('left'), right: side('right') };
}

/** Says so where a neighbour’s side doesn’t reach as far as the case needs: to its front, its back, and both its ends. */
export function servesCase(
  draft: Draft,
  frame: CaseFrame,
  side: DraftPart,
  hand: Hand,
  rear: Traced,
): boolean {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const [min, max] = [side.box.min, side.box.max];
  const short =
    t(min[1]) !== t(frame.panelFront)
      ? 'its front does not stand level'
      : t(max[1]) < t(rear)
        ? 'it is not as deep'
        : t(min[2]) > t(frame.foot)
          ? 'it does not reach as far down'
          : t(max[2]) < t(frame.head)
            ? 'it does not reach as high'
            : hasSlidBack(frame) && t(max[2]) > t(frame.head)
              ? 'it runs on above, so that the back can’t be slid into its groove'
              : undefined;
  if (short === undefined) return true;
  draft.stop(
    'cases.side-does-not-serve',
    frame.box,
    `${hand}Side`,
    `The ${side.name} can’t serve “${frame.box.id}” as well: ${short}.`,
    {
      says: short.includes('groove')
        ? 'Let the back into rabbets, or give the case a side of its own.'
        : 'Make both cases alike there (size, base, edging), let the higher one have the side, or give this one its own.',
    },
  );
  return false;
}

/** The stretch of a side, along its length, that a case stands against. */
export function runOnSide(
  draft: Draft,
  frame: CaseFrame,
  side: DraftPart,
): { readonly from: Traced; readonly to: Traced } {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  if (side.record === frame.box.id) return { from: draft.nothing, to: side.length };
  const above = t(side.box.max[2]) > t(frame.head);
  const below = t(side.box.min[2]) < t(frame.foot);
  return {
    from: below
      ? inPart(draft, side, 2, frame.foot, 'where the lower case begins, from the end of the side')
      : draft.nothing,
    to: above
      ? inPart(draft, side, 2, frame.head, 'where the lower case ends, from the end of the side')
      : side.length,
  };
}
