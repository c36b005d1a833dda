import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face, Groove, Rabbet } from '../feature.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { depthIn } from '../joints/let-in.ts';
import type { Direction } from '../place.ts';
import { type BackBounds, beginsOver, endsOver } from './back-extent.ts';
import type { CasePanels } from './case-panels.ts';
import { endsAtSide, isMitred, runsSomewhere, runsThrough } from './corners.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { type Hand, runOnSide } from './shared-sides.ts';

/** A back, and what it stands between: the sides of its case, or what bounds its bay. */
export interface BackIn extends BackBounds {
  readonly part: DraftPart;
  readonly record: RecordOf<'back'>;
  /** The back that the channels of its sides are named by: its own, or the lowest of those in one column. */
  readonly head: RecordOf<'back'>;
}

/** The backs of a case, and the channels that take them where they are let in: one, or one for each bay that has its own. */
export function backPanels(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  bays: ReadonlyMap<string, BackBounds>,
): readonly BackIn[] {
  return frame.backs.flatMap((record): BackIn[] => {
    const bounds: BackBounds = bays.get(record.parent) ?? { left: panels.left, right: panels.right };
    const column = columnOf(frame, record, bays);
    const part = backPanel(draft, frame, panels, record, bounds, column);
    return [{ part, record, head: column.head, ...bounds }];
  });
}

/** Where a channel begins and ends, unless it runs from end to end. */
interface Stretch {
  readonly from?: Traced | undefined;
  readonly to?: Traced | undefined;
}

/** Backs one above another, or one alone: they stand in one channel of either side, named by the lowest. */
interface Column extends Stretch {
  readonly head: RecordOf<'back'>;
}

function columnOf(frame: CaseFrame, back: RecordOf<'back'>, bays: ReadonlyMap<string, BackBounds>): Column {
  const own = bays.get(back.parent);
  if (!own?.below && !own?.above) return { head: back };
  const [head, last] = [frame.backs[0]!, frame.backs.at(-1)!];
  const [below, above] = [bays.get(head.parent)?.below, bays.get(last.parent)?.above];
  return {
    head,
    ...(below ? { from: below.box.min[2] } : {}),
    ...(above ? { to: above.box.max[2] } : {}),
  };
}

function backPanel(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  back: RecordOf<'back'>,
  bounds: BackBounds,
  column: Column,
): DraftPart {
  const l = draft.ledger;
  const lot = draft.lot(back.board);
  const thickness = draft.thickness(lot);
  const clear = l.row(SETTING_OUT.backClear);
  const front = l.sum('front of the back panel', frame.panelFront, frame.insideDepth);
  const { foot, height } = upAndDown(draft, frame, panels, back, bounds);
  const ofBay = back.parent === frame.box.id ? undefined : back.parent;
  const inside = ofBay
    ? l.less('clear width of the bay', bounds.right.box.min[0], bounds.left.box.max[0])
    : panels.inside.width;
  const common = {
    record: back.id,
    role: 'back',
    name: ofBay ? `back in ${ofBay}` : `back${ofCase(frame)}`,
    family: 'back' as const,
    lot,
    ...grainOfBack(
      draft,
      back.board,
      bounds.below || bounds.above ? height : frame.boxHeight,
      ofBay ? inside : frame.width,
    ),
  };
  if (back.fitting === 'applied') {
    const left = bounds.left === panels.left ? frame.left : beginsOver(draft, frame, back, bounds.left, 0);
    const width =
      bounds.left === panels.left && bounds.right === panels.right
        ? frame.width
        : l.less(
            'width of the back',
            bounds.right === panels.right
              ? l.sum('right side of the case', frame.left, frame.width)
              : endsOver(draft, frame, back, bounds.right, { axis: 0, start: left }),
            left,
          );
    return draft.panel({ at: [left, front, foot], size: [width, thickness, height], ...common });
  }
  const deep =
    back.fitting === 'groove'
      ? grooves(draft, frame, panels, bounds, back, column)
      : rabbets(draft, frame, panels, bounds, column);
  const left = l.less(
    `bottom of the left ${back.fitting}`,
    ofBay ? bounds.left.box.max[0] : panels.inside.left,
    deep.left,
  );
  return draft.panel({
    at: [l.sum(`left edge of the back, clear of its ${back.fitting}`, left, clear), front, foot],
    size: [
      l.less(
        `width of the back, clear of both ${back.fitting}s`,
        l.sum(`width between the ${back.fitting}s`, inside, deep.left, deep.right),
        clear,
        clear,
      ),
      thickness,
      height,
    ],
    between: true,
    ...common,
  });
}

/** Where a back begins and how high it is: all of its case, or from one fixed shelf to another. */
function upAndDown(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  back: RecordOf<'back'>,
  { below, above }: BackBounds,
): { readonly foot: Traced; readonly height: Traced } {
  const l = draft.ledger;
  const clear = l.row(SETTING_OUT.backClear);
  // What runs through under or over the sides runs on under or over a back that is let in.
  const through = runsThrough(frame);
  const letIn = back.fitting !== 'applied';
  const [bottom, lid] = [letIn && runsSomewhere(through.bottom), letIn && runsSomewhere(through.lid)];
  const lowest = bottom ? panels.inside.floor : frame.under;
  if (below || above) {
    const foot = below ? beginsOver(draft, frame, back, below, 2) : lowest;
    const highest = above
      ? endsOver(draft, frame, back, above, { axis: 2, start: foot })
      : lid
        ? panels.lid!.box.min[2]
        : l.sum('upper end of the case', frame.under, frame.boxHeight);
    // Where two meet behind a shelf, the upper one stands on the lower.
    return { foot, height: l.less('height of the back', highest, foot, ...(above ? [] : [clear])) };
  }
  const height = l.less('height of the back, clear of the top', frame.boxHeight, clear);
  const ends = [bottom, lid].filter((t) => t).map(() => frame.board);
  return {
    foot: lowest,
    height:
      ends.length > 0 ? l.less('height of the back, between what runs through', height, ...ends) : height,
  };
}

/** Whether an upright takes backs from both of its faces: then a third of it is left between. */
function takesTwo(frame: CaseFrame, upright: DraftPart, hand: Hand): boolean {
  return frame.sides[hand].shared || upright.role.startsWith('divider');
}

/** A rabbet along the back edge of either side. */
function rabbets(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  bounds: BackBounds,
  column: Column,
): Readonly<Record<Hand, Traced>> {
  const rabbet = (hand: Hand) => {
    const side = bounds[hand];
    const share = takesTwo(frame, side, hand) ? SETTING_OUT.dadoDepth : SETTING_OUT.rabbetDepth;
    const depth = depthIn(draft, 'depth of the rabbet', side.thickness, share);
    return cutOnce(side, {
      kind: 'rabbet',
      ...channel(side, hand, column),
      ...stretch(draft, frame, side, column, besideFlats(draft, frame, panels, hand, side)),
      width: frame.backRoom,
      depth,
    });
  };
  return { left: rabbet('left'), right: rabbet('right') };
}

/** A groove in either side, in from its back edge, a little wider than the back is thick. */
function grooves(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  bounds: BackBounds,
  back: RecordOf<'back'>,
  column: Column,
): Readonly<Record<Hand, Traced>> {
  const l = draft.ledger;
  const wider = l.row(SETTING_OUT.dadoClear);
  const thickness = draft.thickness(draft.lot(back.board));
  // Backs of several thicknesses have their fronts in one plane, and thinner ones more wood behind them.
  const thinner = () =>
    l.less('how much thinner it is than the thickest back', frame.backThickness, thickness);
  // Beside one in rabbets the plane is where the panels inside end, as they are sawn.
  const plane = () =>
    l.less('from the back edge of the sides to the front of the back', rearOf(frame, l), frame.insideDepth);
  const behind = frame.backs.some((b) => b.fitting === 'rabbet')
    ? l.less('behind the back', plane(), thickness)
    : frame.backs.length > 1
      ? l.sum('behind the back', frame.backSetIn, thinner())
      : frame.backSetIn;
  const inset = l.less('from the back edge to the groove', behind, wider);
  if (l.ticks(inset) < l.ticks(l.row(SETTING_OUT.backLip)))
    draft.stop(
      'back.no-lip',
      back,
      'setIn',
      'So little wood would be left behind the groove for the back that it breaks out.',
      { says: 'Set the back in by 10 mm.', edits: [{ record: back.id, field: 'setIn', value: '10 mm' }] },
    );
  const groove = (hand: Hand) => {
    const side = bounds[hand];
    const share = takesTwo(frame, side, hand) ? SETTING_OUT.dadoDepth : SETTING_OUT.backGrooveDepth;
    const depth = depthIn(draft, 'depth of the groove', side.thickness, share);
    return cutOnce(side, {
      kind: 'groove',
      ...channel(side, hand, column),
      // Whatever stands in it slides in from its upper end.
      ...stretch(draft, frame, side, { from: besideFlats(draft, frame, panels, hand, side).from }),
      inset,
      width: l.sum('width of the groove: the back, and a little to slide in', thickness, wider),
      depth,
    });
  };
  return { left: groove('left'), right: groove('right') };
}

/** How deep the sides are behind their front edging. */
function rearOf(frame: CaseFrame, l: Draft['ledger']): Traced {
  return l.less('depth behind the front edging', frame.depth, frame.edgingThickness);
}

/** What rabbet and groove have in common: along the back edge of a side, out of its inner face. */
function channel(side: DraftPart, hand: Hand, { head }: Column) {
  return {
    id: `${side.id}#${head.id}`,
    purpose: 'for the back',
    face: sideLooking(side.place, hand === 'left' ? '+x' : '-x') as Face,
    edge: sideLooking(side.place, '+y') as Edge,
  };
}

/** Cuts a channel, unless it is there for a back below; how deep it is. */
function cutOnce(side: DraftPart, cut: Rabbet | Groove): Traced {
  const there = side.features.find((f) => f.id === cut.id);
  if (there?.kind === 'rabbet' || there?.kind === 'groove') return there.depth;
  side.features.push(cut);
  return cut.depth;
}

/**
 * Where channels end on a side: what runs on under or over the back from the other side ends at this one. Where it is let in
 * there, they run into its own channel a little, so that no sliver stands between. Right through a mitre they would leave a
 * hole in its corner; a little into it nothing is seen of them.
 */
function besideFlats(
  draft: Draft,
  frame: CaseFrame,
  { left, right, bottom, lid }: CasePanels,
  hand: Hand,
  side: DraftPart,
): Stretch {
  if (side !== (hand === 'left' ? left : right)) return {};
  const l = draft.ledger;
  const through = runsThrough(frame);
  // More than it is off by as it is marked.
  const step = draft.stepOf('marking');
  const goesIn = (flat: DraftPart) => flat.tongues[hand === 'left' ? 'start' : 'end'] !== undefined;
  if (isMitred(frame)) {
    const on = l.row(SETTING_OUT.intoMitre);
    return {
      from: l.less('a little into the mitre', bottom.box.max[2], on),
      ...(lid ? { to: l.sum('a little into the mitre', lid.box.min[2], on) } : {}),
    };
  }
  const from = () => {
    const face = bottom.box.max[2];
    return goesIn(bottom) ? l.less('into the channel of the bottom', face, step) : face;
  };
  const to = (flat: DraftPart) => {
    const face = flat.box.min[2];
    return goesIn(flat) ? l.sum('into the channel of the lid', face, step) : face;
  };
  return {
    ...(endsAtSide(through.bottom, hand) ? { from: from() } : {}),
    ...(lid && endsAtSide(through.lid, hand) ? { to: to(lid) } : {}),
  };
}

/** Where a rabbet runs along a side: past all backs of its column, and no further where a bay has none. */
function stretch(draft: Draft, frame: CaseFrame, side: DraftPart, ...ends: readonly Stretch[]) {
  const at = (z: Traced) => inPart(draft, side, 2, z, 'where the backs end, from the end of the side');
  const from = ends.find((e) => e.from !== undefined)?.from;
  const to = ends.find((e) => e.to !== undefined)?.to;
  return {
    ...runOnSide(draft, frame, side),
    ...(from === undefined ? {} : { from: at(from) }),
    ...(to === undefined ? {} : { to: at(to) }),
  };
}

/** The grain stands upright where a sheet is wide enough for that, and lies along otherwise; the show face looks inside. */
function grainOfBack(
  draft: Draft,
  lotId: string,
  height: Traced,
  width: Traced,
): { readonly length: Direction; readonly width: Direction } {
  const l = draft.ledger;
  const path = (stock: string, field: string) => `shop/rack/lots/${lotId}/stock/${stock}/${field}`;
  const upright = draft
    .lot(lotId)
    .stock.some(
      (s) =>
        l.ticks(draft.typed(path(s.id, 'length'), s.length)) >= l.ticks(height) &&
        l.ticks(draft.typed(path(s.id, 'width'), s.width!)) >= l.ticks(width),
    );
  return upright ? { length: '+z', width: '-x' } : { length: '+x', width: '+z' };
}
