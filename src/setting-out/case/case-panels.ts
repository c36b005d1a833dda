import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, Tongues } from '../draft.ts';
import { buttedBetween } from '../joints/joinery.ts';
import { intoCorner, lengthened } from '../joints/let-in.ts';
import { type AtCorners, isMitred, runsSomewhere, runsThrough } from './corners.ts';
import { edgedBy } from './end-edging.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { heldAcrossGrain } from './free-top.ts';
import { mitreCorners, roughForMitres } from './mitred-corners.ts';
import type { Hand } from './shared-sides.ts';
import { standsInStep } from './shares-as-sawn.ts';

/** The panels that make a case a box, and the clear space they leave. */
export interface CasePanels {
  readonly left: DraftPart;
  readonly right: DraftPart;
  readonly bottom: DraftPart;
  /** Absent where an applied top closes the case: one of a panel, which hardly moves. */
  readonly lid: DraftPart | undefined;
  readonly inside: {
    readonly left: Traced;
    readonly floor: Traced;
    readonly width: Traced;
    readonly height: Traced;
  };
}

/** The sides that belong to a case. */
export function ownSides(draft: Draft, frame: CaseFrame): Readonly<Partial<Record<Hand, DraftPart>>> {
  const l = draft.ledger;
  const { box, lot, board, sides } = frame;
  const through = runsThrough(frame);
  const mitred = isMitred(frame);
  const corner = intoCorner(draft, frame, board);
  const stands = (hand: Hand) => standsAt(draft, frame, corner, hand);
  const leftStands = stands('left');
  const alike = through.bottom.left === through.bottom.right && through.lid.left === through.lid.right;
  const upright = { left: leftStands, right: alike ? leftStands : stands('right') };
  const side = (hand: Hand, x: Traced) => {
    const { foot, height, tongues } = upright[hand];
    return draft.panel({
      record: box.id,
      role: `${hand}-side`,
      name: `${hand} side${ofCase(frame)}`,
      family: 'side',
      lot,
      ...lengthened(draft, [x, frame.panelFront, foot], [board, sideDepth(draft, frame), height], 2, tongues),
      tongues,
      ...(mitred
        ? {
            rough: roughForMitres(
              draft,
              [height, sideDepth(draft, frame), board],
              runsSomewhere(through.lid) ? 2 : 1,
            ),
          }
        : {}),
      length: '+z',
      // The show face looks outward, so the two are mirror images.
      width: hand === 'left' ? '+y' : '-y',
      // One that two cases share has no outer face.
      ...(sides[hand].shared ? {} : { hand }),
    });
  };
  const own: { left?: DraftPart; right?: DraftPart } = {};
  if (sides.left.of === box) own.left = side('left', frame.left);
  if (sides.right.of === box)
    own.right = side('right', l.less('inner face of the right side', frame.right, board));
  return own;
}

/** Where a side stands: on the floor or on the bottom, up to the lid or past it, and what of it goes into these. */
function standsAt(draft: Draft, frame: CaseFrame, corner: Traced | undefined, hand: Hand) {
  const l = draft.ledger;
  const { board } = frame;
  const { bottom, lid } = runsThrough(frame);
  // Mitred sides reach past the panels that run through, to the tips.
  const on = isMitred(frame) ? { bottom: false, lid: false } : { bottom: bottom[hand], lid: lid[hand] };
  const onPanels = [on.bottom, on.lid].filter((t) => t).map(() => board);
  const edged = edgedBy(draft, frame, 'upper');
  const foot = on.bottom ? l.sum('lower end of the sides, on the bottom', frame.foot, board) : frame.foot;
  const between =
    onPanels.length > 0
      ? l.less('height of the sides, between what runs through', frame.uprightHeight, ...onPanels)
      : frame.uprightHeight;
  return {
    foot,
    height:
      draft.isSome(edged) && !on.lid
        ? l.less('height of the sides, under the strips on their ends', between, edged)
        : between,
    tongues: { start: on.bottom ? corner : undefined, end: on.lid ? corner : undefined },
  };
}

/** Only a back that is let in needs sides that run past it. */
export function sideDepth(draft: Draft, frame: CaseFrame): Traced {
  return frame.back?.fitting === 'applied'
    ? frame.insideDepth
    : draft.ledger.less('depth of the sides, behind the front edging', frame.depth, frame.edgingThickness);
}

/** A bottom between two sides, and a lid where no applied top of a panel closes it; at each corner one of the two that meet runs through. */
export function casePanels(
  draft: Draft,
  frame: CaseFrame,
  { left, right }: Readonly<Record<Hand, DraftPart>>,
): CasePanels {
  const l = draft.ledger;
  const { box, lot, board, sides } = frame;
  const through = runsThrough(frame);
  const insideLeft = l.sum('inner face of the left side', frame.left, frame.leftBoard);
  const { insideWidth } = frame;
  const tongues = {
    start: intoCorner(draft, frame, frame.leftBoard, sides.left.shared),
    end: intoCorner(draft, frame, frame.rightBoard, sides.right.shared),
  };
  const flat = (
    role: 'bottom' | 'lid',
    family: 'bottom' | 'top',
    z: Traced,
    { record, name, of, thick }: { record: string; name: string; of: typeof lot; thick: Traced },
  ) =>
    draft.panel({
      record,
      role,
      name: `${name}${ofCase(frame)}`,
      family,
      lot: of,
      ...(runsSomewhere(through[role])
        ? {
            ...runningThrough(draft, frame, through[role], tongues, z, thick),
            ...(isMitred(frame)
              ? { rough: roughForMitres(draft, [frame.width, sideDepth(draft, frame), thick], 2) }
              : {}),
          }
        : {
            tongues,
            between: true,
            ...lengthened(
              draft,
              [insideLeft, frame.panelFront, z],
              [insideWidth, frame.insideDepth, thick],
              0,
              tongues,
            ),
          }),
      length: '+x',
      width: '+y',
    });
  const bottom = flat('bottom', 'bottom', frame.under, {
    record: box.id,
    name: 'bottom',
    of: lot,
    thick: board,
  });
  const { inset } = frame;
  if (inset) heldAcrossGrain(draft, inset);
  const lid = !frame.lidded
    ? undefined
    : flat('lid', 'top', l.less('underside of the top panel', frame.head, frame.lidBoard), {
        record: inset?.id ?? box.id,
        name: inset ? 'top' : 'top panel',
        of: inset ? draft.lot(inset.board) : lot,
        thick: frame.lidBoard,
      });
  if (isMitred(frame)) mitreCorners([left, right], bottom, lid);
  if (standsInStep(draft, box)) for (const panel of lid ? [bottom, lid] : [bottom]) draft.spacers.add(panel);
  return {
    left,
    right,
    bottom,
    lid,
    inside: {
      left: insideLeft,
      floor: l.sum('upper face of the bottom', frame.under, board),
      width: insideWidth,
      height: frame.insideHeight,
    },
  };
}

/**
 * A panel that runs through at one corner or at both: out to the outer face of the side there, less the strip that edges its
 * end; at the other corner it ends at the side, or goes into it.
 */
function runningThrough(
  draft: Draft,
  frame: CaseFrame,
  through: AtCorners,
  tongues: Tongues,
  z: Traced,
  thick: Traced,
) {
  const l = draft.ledger;
  // Strips on its ends make up for what it is shorter.
  const [onLeft, onRight] = (['left', 'right'] as const).map((side) =>
    through[side] ? edgedBy(draft, frame, side) : draft.nothing,
  ) as [Traced, Traced];
  const begins = !through.left
    ? l.sum('inner face of the left side', frame.left, frame.leftBoard)
    : draft.isSome(onLeft)
      ? l.sum('left end of the panel, inside its edging', frame.left, onLeft)
      : frame.left;
  const off = [
    ...(through.left ? [] : [frame.leftBoard]),
    ...(through.right ? [] : [frame.rightBoard]),
    ...[onLeft, onRight].filter((t) => draft.isSome(t)),
  ];
  const both = through.left && through.right;
  const width =
    off.length > 0
      ? l.less(
          both
            ? 'length of the panel, between the strips on its ends'
            : buttedBetween('length of the panel, from the side that it ends at', frame.joinery),
          frame.width,
          ...off,
        )
      : frame.width;
  const own: Tongues = {
    start: through.left ? undefined : tongues.start,
    end: through.right ? undefined : tongues.end,
  };
  return {
    ...lengthened(draft, [begins, frame.panelFront, z], [width, sideDepth(draft, frame), thick], 0, own),
    ...(both ? {} : { tongues: own }),
  };
}
