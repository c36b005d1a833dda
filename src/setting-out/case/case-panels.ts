import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { intoCorner, lengthened } from '../joints/let-in.ts';
import { runsThrough } from './corners.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';

/** The panels that make a case a box, and the clear space they leave. */
export interface CasePanels {
  readonly left: DraftPart;
  readonly right: DraftPart;
  readonly bottom: DraftPart;
  /** Absent where an applied top closes the case. */
  readonly lid: DraftPart | undefined;
  readonly inside: {
    readonly left: Traced;
    readonly floor: Traced;
    readonly width: Traced;
    readonly height: Traced;
  };
}

/** Two sides, a bottom, and a lid where there is no applied top; at each corner one of the two that meet runs through. */
export function casePanels(draft: Draft, frame: CaseFrame): CasePanels {
  const l = draft.ledger;
  const { box, lot, board } = frame;
  // Only a back that is let in needs sides that run past it.
  const sideDepth =
    frame.back?.fitting === 'applied'
      ? frame.insideDepth
      : l.less('depth of the sides, behind the front edging', frame.depth, frame.edgingThickness);
  const through = runsThrough(frame);
  const corner = intoCorner(draft, frame);
  const sideTongues = {
    start: through.bottom ? corner : undefined,
    end: through.lid ? corner : undefined,
  };
  const onPanels = [through.bottom, through.lid].filter((t) => t).map(() => board);
  const sideFoot = through.bottom
    ? l.sum('lower end of the sides, on the bottom', frame.foot, board)
    : frame.foot;
  const sideHeight =
    onPanels.length > 0
      ? l.less('height of the sides, between what runs through', frame.uprightHeight, ...onPanels)
      : frame.uprightHeight;
  const side = (hand: 'left' | 'right', x: Traced) =>
    draft.panel({
      record: box.id,
      role: `${hand}-side`,
      name: `${hand} side${ofCase(frame)}`,
      family: 'side',
      lot,
      ...lengthened(draft, [x, frame.panelFront, sideFoot], [board, sideDepth, sideHeight], 2, sideTongues),
      tongues: sideTongues,
      length: '+z',
      // The show face looks outward, so the two are mirror images.
      width: hand === 'left' ? '+y' : '-y',
      hand,
    });
  const left = side('left', frame.left);
  const right = side('right', l.less('inner face of the right side', frame.right, board));
  const insideLeft = l.sum('inner face of the left side', frame.left, board);
  const { insideWidth } = frame;
  const tongues = { start: corner, end: corner };
  const flat = (role: 'bottom' | 'lid', name: string, family: 'bottom' | 'top', z: Traced) =>
    draft.panel({
      record: box.id,
      role,
      name: `${name}${ofCase(frame)}`,
      family,
      lot,
      ...(through[role]
        ? {
            at: [frame.left, frame.panelFront, z],
            size: [frame.width, sideDepth, board],
          }
        : {
            ...lengthened(
              draft,
              [insideLeft, frame.panelFront, z],
              [insideWidth, frame.insideDepth, board],
              0,
              tongues,
            ),
            tongues,
            between: true,
          }),
      length: '+x',
      width: '+y',
    });
  const bottom = flat('bottom', 'bottom', 'bottom', frame.under);
  const lid = frame.top
    ? undefined
    : flat('lid', 'top panel', 'top', l.less('underside of the top panel', frame.head, board));
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
