import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import { endsAtSide, runsThrough } from '../case/corners.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Parting } from '../spaces/openings.ts';
import type { Joinable } from './joints.ts';

const HANDS = ['left', 'right'] as const;
type Closing = Pick<Joinable, 'frame' | 'panels' | 'partings' | 'backs'>;

/** Tells where panels with tongues, dowels or biscuits are in one another’s way as they are put together. */
export function stepsClose(draft: Draft, parts: Closing): void {
  const { joints } = parts.frame;
  if (joints === 'tongue') slidesIn(draft, parts);
  if (joints === 'tongue' || joints === 'dowels' || joints === 'biscuits') shutByBack(draft, parts);
}

/**
 * A shelf or a lid can’t come down on tongues while its own go into a side that stands in the bottom already: it slides in
 * from behind, over the tongues of what stands under it; but not where its front edging is in the way.
 */
function slidesIn(draft: Draft, { frame, panels, partings }: Closing): void {
  const { bottom, lid: over } = runsThrough(frame);
  const hands = HANDS.filter((hand) => bottom[hand]);
  if (hands.length === 0 || !frame.edging) return;
  const { left, right, lid } = panels;
  const both = hands.length === 2;
  const stop = (part: DraftPart, on: DraftPart) =>
    draft.stop(
      'joints.cannot-close',
      frame.box,
      'bottom',
      `The ${both ? 'sides stand' : `${hands[0]} side stands`} in the bottom, so the ${part.name} must slide in ${both ? 'between them' : 'beside it'} from behind, and its front edging would run into the tongue of the ${on.name}.`,
      {
        says: 'Let the bottom lie between the sides.',
        edits: [{ record: frame.box.id, field: 'bottom', value: 'between' }],
      },
      byDados(frame.box),
    );
  const lidEnds = lid !== undefined && hands.some((hand) => !over[hand]);
  const past = HANDS.find((hand) => over[hand]);
  if (lidEnds && past) {
    stop(lid, { left, right }[past]);
    return;
  }
  const standing = hands.map((hand) => ({ left, right })[hand]);
  const meets = (p: DraftPart | undefined) => standing.some((side) => side === p);
  const slide = [
    ...partings
      .filter((p) => !p.upright && !p.behind && (both || meets(p.from) || meets(p.to)))
      .map((p) => p.part),
    ...(lidEnds ? [lid] : []),
  ];
  // Dividers for trays slide in under a shelf that is there; a lid comes when they stand.
  const stands = ({ thin, to }: Parting) => to !== undefined && slide.includes(to) && (!thin || to === lid);
  const upright = partings.find((p) => p.upright && stands(p));
  if (upright) stop(upright.to!, upright.part);
}

/**
 * A lid that lies over one side and ends at the other is shut in by that other side, which is pushed on to it last; a back in
 * grooves is in by then, and no clamp gets past it to the far end of a shelf between that side and a divider.
 */
function shutByBack(draft: Draft, { frame, panels, partings, backs }: Closing): void {
  const { bottom, lid } = runsThrough(frame);
  // Tongues of a side that stands in the bottom let the lid slide in from behind; no pegs do.
  const last = HANDS.find((hand) => endsAtSide(lid, hand) && !(frame.joints === 'tongue' && bottom[hand]));
  if (!last || !panels.lid) return;
  const side = { left: panels.left, right: panels.right }[last];
  const slid = backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part);
  // The other jaw would stand beyond the divider at the shelf's other end.
  const isShut = ({ from, to, part, upright, behind }: Parting) => {
    const divider = from === side ? to : to === side ? from : undefined;
    if (upright || behind || !divider || divider === panels.left || divider === panels.right) return false;
    return slid.some((back) => goesBeyond(draft, back, divider, last) && meetsAlong(draft, back, part, 2));
  };
  if (!partings.some(isShut)) return;
  draft.stop(
    'joints.cannot-close',
    frame.box,
    'lid',
    `The back slides into its grooves before the ${panels.lid.name} lies on it, and the ${last} side is pushed on to that last: then no clamp gets past the back at the shelves.`,
    {
      says: 'Let the back into rabbets.',
      edits: frame.backs.map((b) => ({ record: b.id, field: 'fitting', value: 'rabbet' })),
    },
    {
      says: 'Let the lid lie over both sides.',
      edits: [{ record: frame.box.id, field: 'lid', value: 'over' }],
    },
    byDados(frame.box),
  );
}

/** True of a back that closes what lies beyond a divider, seen from one side of the case. */
function goesBeyond(draft: Draft, back: DraftPart, divider: DraftPart, from: 'left' | 'right'): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const [b, d] = [back.box, divider.box];
  return (
    meetsAlong(draft, back, divider, 0) &&
    (from === 'right' ? t(b.min[0]) < t(d.min[0]) : t(b.max[0]) > t(d.max[0]))
  );
}

function meetsAlong(draft: Draft, a: DraftPart, b: DraftPart, axis: 0 | 2): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  return t(a.box.min[axis]) < t(b.box.max[axis]) && t(a.box.max[axis]) > t(b.box.min[axis]);
}

function byDados(box: RecordOf<'case'>) {
  return {
    says: 'Join the panels by dados alone.',
    edits: [{ record: box.id, field: 'joints', value: 'dado' }],
  };
}
