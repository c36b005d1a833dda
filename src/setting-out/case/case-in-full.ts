import { hangDoors } from '../doors/doors.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { drawers } from '../drawers/drawers.ts';
import { ClearLoops } from '../fits/clear-loops.ts';
import { fitsOfCase } from '../fits/fits-of-case.ts';
import { shopMadeHandles } from '../handles/handles.ts';
import { holeRows } from '../holes/hole-rows.ts';
import type { Bores } from '../joints/bores.ts';
import { type Joinable, joinCase } from '../joints/joints.ts';
import { fixedFront } from '../lids/fixed-front.ts';
import { hangLid } from '../lids/hang-lid.ts';
import { joinFront } from '../lids/join-front.ts';
import { pinnedShelves } from '../pins/pinned-shelves.ts';
import { boughtPulls } from '../pulls/bought-pulls.ts';
import { slidingDoors } from '../sliding/sliding-doors.ts';
import type { ClearSizes } from '../spaces/clear-sizes.ts';
import { ClosedSpaces } from '../spaces/closed-spaces.ts';
import { type Bounded, divideSpace, loadSurface, type Parting, type Space } from '../spaces/openings.ts';
import { fixedShelves } from '../spaces/shelves.ts';
import { trayDividers } from '../spaces/trays.ts';
import { backPanels } from './back.ts';
import { boundsOfBay } from './back-extent.ts';
import { baseFrame } from './base.ts';
import { casePanels } from './case-panels.ts';
import { tellEnds } from './end-edging.ts';
import { type Footing, footing, joinFooting, railsBeforeBack } from './footing.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { caseEdging } from './front-edging.ts';
import { joinLegs, type Legs, legsOf } from './legs.ts';
import { standOnLevellers } from './levellers.ts';
import type { Hand } from './shared-sides.ts';
import { appliedTop } from './top.ts';

/** The parts of a case: its panels, what divides and fills it, what goes round it. */
export interface MadeCase extends Omit<Joinable, 'beyond' | 'rails'> {
  readonly closed: ClosedSpaces;
  /** The openings that aren’t split any further. */
  readonly leaves: readonly Space[];
  readonly stands: Footing;
  readonly legs: Legs;
}

/** Makes the parts of one case; undefined where nothing is left inside. */
export function partsOfCase(
  draft: Draft,
  frame: CaseFrame,
  clear: ClearSizes,
  sides: Readonly<Record<Hand, DraftPart>>,
): MadeCase | undefined {
  const panels = casePanels(draft, frame, sides);
  if (!positive(draft, panels.left, panels.bottom) || !draft.isSome(panels.inside.height)) {
    draft.stop(
      'case.no-inside',
      frame.box,
      'board',
      'The case is so small that its panels leave no space inside.',
      {
        says: 'Make the piece larger.',
      },
    );
    return undefined;
  }
  const partings: Parting[] = [];
  const leaves: Space[] = [];
  const closed = new ClosedSpaces(draft, frame);
  const root = draft.tree.childOf(frame.box.id, 'opening');
  const fixed = fixedFront(draft, frame, panels);
  const l = draft.ledger;
  const whole: Bounded = {
    at: [
      panels.inside.left,
      fixed ? l.sum('behind the fixed front', frame.panelFront, fixed.thickness) : frame.panelFront,
      panels.inside.floor,
    ],
    size: [
      panels.inside.width,
      fixed ? l.less('depth behind the fixed front', frame.insideDepth, fixed.thickness) : frame.insideDepth,
      panels.inside.height,
    ],
    left: panels.left,
    right: panels.right,
    below: panels.bottom,
    above: panels.lid,
  };
  const front: Parting | undefined = fixed && {
    part: fixed,
    upright: false,
    behind: true,
    from: panels.left,
    to: panels.right,
    space: whole,
  };
  if (root) {
    leaves.push(...divideSpace(draft, frame, clear, { record: root, ...whole }, partings, closed));
    for (const leaf of leaves) {
      fixedShelves(draft, frame, leaf, partings);
      trayDividers(draft, frame, leaf, partings);
    }
  }
  tellEnds(draft, frame);
  const edging = caseEdging(draft, frame, [
    ...[panels.left, panels.right].filter((side) => side.record === frame.box.id),
    panels.bottom,
    ...(panels.lid ? [panels.lid] : []),
    ...partings.filter((p) => !p.behind && !p.thin).map((p) => p.part),
  ]);
  const bays = new Map(
    frame.backs.flatMap((b) => {
      const bay = closed.get(b.parent);
      return bay ? [[b.parent, boundsOfBay(bay, panels.bottom, panels.lid)] as const] : [];
    }),
  );
  const backs = backPanels(draft, frame, panels, bays);
  const back = backs.find((b) => b.record.parent === frame.box.id)?.part;
  const top = appliedTop(draft, frame);
  const legs = legsOf(draft, frame);
  const base = frame.base?.form === 'legs' ? legs.aprons : baseFrame(draft, frame);
  const stands = footing(draft, frame, panels, partings, [...closed.all, whole]);
  return { frame, panels, closed, leaves, partings, back, backs, top, base, legs, edging, stands, front };
}

/** Hangs, bores and joins what was made of a case; the parts of its neighbours are there already. */
export function joinParts(draft: Draft, bores: Bores, made: MadeCase, beyond: readonly DraftPart[]): void {
  const { frame, panels, top, base } = made;
  holeRows(draft, bores, frame, 'panels');
  hangDoors(draft, bores, made);
  slidingDoors(draft, bores, made, top?.board);
  // Aprons are screwed to their legs first: there is only one place for that, and several along the bottom.
  joinLegs(draft, bores, made.legs);
  holeRows(draft, bores, frame, 'doors');
  const before = draft.joints.length;
  if (made.front) joinFront(draft, bores, { beyond, rails: [], ...made }, made.front.part);
  joinCase(draft, bores, {
    beyond,
    rails: railsBeforeBack(draft, frame, panels, made.stands),
    ...made,
  });
  joinFooting(draft, bores, { beyond, ...made }, made.stands);
  hangLid(draft, frame, top, made.back);
  const frames = top ? [base, top.strips] : [base];
  fitsOfCase(draft, {
    frames,
    joints: draft.joints.slice(before),
    ...made,
    partings: [...made.partings, ...made.stands.between, ...(made.front ? [made.front] : [])],
  });
  standOnLevellers(draft, bores, frame, panels.bottom);
  const loops = new ClearLoops(draft, made.closed);
  for (const leaf of made.leaves) {
    pinnedShelves(draft, frame, bores, leaf, loops);
    drawers(draft, bores, { frame, panels, loops }, leaf);
  }
  shopMadeHandles(draft, bores, frame);
  boughtPulls(draft, bores, frame);
  loadTopAndBottom(draft, frame, panels.bottom, top?.board ?? panels.lid);
}

/** The bottom spans its widest bay (or, on a base, front to back); the top spans between uprights. */
function loadTopAndBottom(
  draft: Draft,
  frame: CaseFrame,
  bottom: DraftPart,
  top: DraftPart | undefined,
): void {
  const l = draft.ledger;
  const root = draft.tree.childOf(frame.box.id, 'opening');
  const bays =
    root?.split === 'across'
      ? draft.tree.childrenOf(root.id, 'opening').map((o) => o.id)
      : root
        ? [root.id]
        : [];
  const widths = draft.openings.filter((o) => bays.includes(o.id)).map((o) => o.width);
  const span = widths.length ? l.greatest('widest bay', ...widths) : bottom.length;
  const based = frame.base !== undefined && !['toe-kick', 'levellers'].includes(frame.base.form ?? 'frame');
  // A base carries the bottom at front and back, so there it spans its depth.
  loadSurface(
    draft,
    bottom,
    based ? frame.insideDepth : span,
    based ? span : frame.insideDepth,
    frame.box.load,
    frame.box,
  );
  // On a lid nothing stands, unless the maker says so.
  const record = frame.inset ?? frame.top;
  if (top && (!record?.hinged || record.load !== undefined))
    loadSurface(draft, top, span, frame.depth, record?.load, record ?? frame.box);
}

/** Whether what stands round a case leaves anything of it; stops say what doesn't. */
export function fitsItsFrame(draft: Draft, frame: CaseFrame): boolean {
  const what = frame.alone ? 'piece' : 'case';
  const faults: readonly [boolean, string, string, string][] = [
    [
      draft.isSome(frame.width),
      'width',
      `The top’s overhang is wider than the ${what}.`,
      `Make the ${what} wider, or the overhang smaller.`,
    ],
    [
      draft.isSome(frame.insideDepth),
      'depth',
      'Overhang, edging and back take up the whole depth.',
      `Make the ${what} deeper.`,
    ],
    [
      draft.isSome(frame.uprightHeight),
      'height',
      'Base and top take up the whole height.',
      `Make the ${what} higher, or the base lower.`,
    ],
  ];
  // A place that doesn't come out has been told with its group.
  if (!frame.alone && [frame.site.width, frame.site.height, frame.site.depth].some((t) => !draft.isSome(t)))
    return false;
  for (const [fine, field, sentence, cure] of faults)
    if (!fine)
      draft.stop(
        'case.no-inside',
        frame.alone ? draft.piece : frame.box,
        frame.alone ? field : 'size',
        sentence,
        {
          says: cure,
        },
      );
  return faults.every(([fine]) => fine);
}

function positive(draft: Draft, ...parts: readonly DraftPart[]): boolean {
  return parts.every((p) => [p.length, p.width, p.thickness].every((t) => draft.isSome(t)));
}
