import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { intoCorner, lengthened } from '../joints/let-in.ts';
import { isMitred, runsThrough } from './corners.ts';
import { edgedBy } from './end-edging.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { heldAcrossGrain } from './free-top.ts';
import { mitreCorners, roughForMitres } from './mitred-corners.ts';
import type { Hand } from './shared-sides.ts';

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
  // Mitred sides reach past the panels that run through, to the tips.
  const on = mitred ? { bottom: false, lid: false } : through;
  const corner = intoCorner(draft, frame, board);
  const tongues = {
    start: on.bottom ? corner : undefined,
    end: on.lid ? corner : undefined,
  };
  const onPanels = [on.bottom, on.lid].filter((t) => t).map(() => board);
  const edged = edgedBy(draft, frame, 'upper');
  const foot = on.bottom ? l.sum('lower end of the sides, on the bottom', frame.foot, board) : frame.foot;
  const between =
    onPanels.length > 0
      ? l.less('height of the sides, between what runs through', frame.uprightHeight, ...onPanels)
      : frame.uprightHeight;
  const height = draft.isSome(edged)
    ? l.less('height of the sides, under the strips on their ends', between, edged)
    : between;
  const side = (hand: Hand, x: Traced) =>
    draft.panel({
      record: box.id,
      role: `${hand}-side`,
      name: `${hand} side${ofCase(frame)}`,
      family: 'side',
      lot,
      ...lengthened(draft, [x, frame.panelFront, foot], [board, sideDepth(draft, frame), height], 2, tongues),
      tongues,
      ...(mitred
        ? { rough: roughForMitres(draft, [height, sideDepth(draft, frame), board], through.lid ? 2 : 1) }
        : {}),
      length: '+z',
      // The show face looks outward, so the two are mirror images.
      width: hand === 'left' ? '+y' : '-y',
      // One that two cases share has no outer face.
      ...(sides[hand].shared ? {} : { hand }),
    });
  return {
    ...(sides.left.of === box ? { left: side('left', frame.left) } : {}),
    ...(sides.right.of === box
      ? { right: side('right', l.less('inner face of the right side', frame.right, board)) }
      : {}),
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
  // Strips on the ends of what runs through make up for what these are shorter.
  const [strips, onLeft] = [
    (['left', 'right'] as const).map((side) => edgedBy(draft, frame, side)).filter((t) => draft.isSome(t)),
    edgedBy(draft, frame, 'left'),
  ];
  const start = draft.isSome(onLeft)
    ? l.sum('left end of the panel, inside its edging', frame.left, onLeft)
    : frame.left;
  const width =
    strips.length > 0
      ? l.less('length of the panel, between the strips on its ends', frame.width, ...strips)
      : frame.width;
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
      ...(through[role]
        ? {
            at: [start, frame.panelFront, z],
            size: [width, sideDepth(draft, frame), thick],
            ...(isMitred(frame)
              ? { rough: roughForMitres(draft, [frame.width, sideDepth(draft, frame), thick], 2) }
              : {}),
          }
        : {
            ...lengthened(
              draft,
              [insideLeft, frame.panelFront, z],
              [insideWidth, frame.insideDepth, thick],
              0,
              tongues,
            ),
            tongues,
            between: true,
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
