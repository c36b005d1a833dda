import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import { sideLooking } from '../joints/contact.ts';
import { depthIn } from '../joints/let-in.ts';
import type { Direction } from '../place.ts';
import type { CasePanels } from './case-panels.ts';
import { runsThrough } from './corners.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { type Hand, runOnSide } from './shared-sides.ts';

/** A back, and the two upright panels that it stands between: the sides of its case, or what bounds its bay. */
export interface BackIn {
  readonly part: DraftPart;
  readonly record: RecordOf<'back'>;
  readonly left: DraftPart;
  readonly right: DraftPart;
}

type Bounds = Pick<BackIn, 'left' | 'right'>;

/** The backs of a case, and the channels that take them where they are let in: one, or one for each bay that has its own. */
export function backPanels(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  bays: ReadonlyMap<string, Bounds>,
): readonly BackIn[] {
  return frame.backs.flatMap((record): BackIn[] => {
    const bounds = bays.get(record.parent) ?? panels;
    const part = backPanel(draft, frame, panels, record, bounds);
    return [{ part, record, left: bounds.left, right: bounds.right }];
  });
}

function backPanel(
  draft: Draft,
  frame: CaseFrame,
  panels: CasePanels,
  back: RecordOf<'back'>,
  bounds: Bounds,
): DraftPart {
  const l = draft.ledger;
  const lot = draft.lot(back.board);
  const thickness = draft.thickness(lot);
  const clear = l.row(SETTING_OUT.backClear);
  const front = l.sum('front of the back panel', frame.panelFront, frame.insideDepth);
  const height = l.less('height of the back, clear of the top', frame.boxHeight, clear);
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
    ...grainOfBack(draft, back.board, frame.boxHeight, ofBay ? inside : frame.width),
  };
  if (back.fitting === 'applied') {
    return draft.panel({
      ...common,
      at: [frame.left, front, frame.under],
      size: [frame.width, thickness, height],
    });
  }
  const deep =
    back.fitting === 'groove' ? grooves(draft, frame, bounds, back) : rabbets(draft, frame, bounds, back);
  // What runs through under or over the sides runs on under or over the back as well.
  const { bottom, lid } = runsThrough(frame);
  const { floor } = panels.inside;
  const ends = [bottom, lid].filter((t) => t).map(() => frame.board);
  const left = l.less(
    `bottom of the left ${back.fitting}`,
    ofBay ? bounds.left.box.max[0] : panels.inside.left,
    deep.left,
  );
  return draft.panel({
    ...common,
    at: [
      l.sum(`left edge of the back, clear of its ${back.fitting}`, left, clear),
      front,
      bottom ? floor : frame.under,
    ],
    size: [
      l.less(
        `width of the back, clear of both ${back.fitting}s`,
        l.sum(`width between the ${back.fitting}s`, inside, deep.left, deep.right),
        clear,
        clear,
      ),
      thickness,
      ends.length > 0 ? l.less('height of the back, between what runs through', height, ...ends) : height,
    ],
    between: true,
  });
}

/** Whether an upright takes backs from both of its faces: then a third of it is left between. */
function takesTwo(frame: CaseFrame, upright: DraftPart, hand: Hand): boolean {
  return frame.sides[hand].shared || upright.role.startsWith('divider');
}

/** A rabbet along the back edge of either side. */
function rabbets(
  draft: Draft,
  frame: CaseFrame,
  bounds: Bounds,
  back: RecordOf<'back'>,
): Readonly<Record<Hand, Traced>> {
  const rabbet = (hand: Hand) => {
    const side = bounds[hand];
    const share = takesTwo(frame, side, hand) ? SETTING_OUT.dadoDepth : SETTING_OUT.rabbetDepth;
    const depth = depthIn(draft, 'depth of the rabbet', side.thickness, share);
    side.features.push({
      kind: 'rabbet',
      ...channel(draft, frame, side, hand, back),
      width: frame.backRoom,
      depth,
    });
    return depth;
  };
  return { left: rabbet('left'), right: rabbet('right') };
}

/** A groove in either side, in from its back edge, a little wider than the back is thick. */
function grooves(
  draft: Draft,
  frame: CaseFrame,
  bounds: Bounds,
  back: RecordOf<'back'>,
): Readonly<Record<Hand, Traced>> {
  const l = draft.ledger;
  const wider = l.row(SETTING_OUT.dadoClear);
  const thickness = draft.thickness(draft.lot(back.board));
  // Backs of several thicknesses have their fronts in one plane, and thinner ones more wood behind them.
  const thinner = l.less('how much thinner it is than the thickest back', frame.backThickness, thickness);
  const inset = l.less(
    'from the back edge to the groove',
    frame.backs.length > 1 ? l.sum('behind the back', frame.backSetIn, thinner) : frame.backSetIn,
    wider,
  );
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
    side.features.push({
      kind: 'groove',
      ...channel(draft, frame, side, hand, back),
      inset,
      width: l.sum('width of the groove: the back, and a little to slide in', thickness, wider),
      depth,
    });
    return depth;
  };
  return { left: groove('left'), right: groove('right') };
}

/** What rabbet and groove have in common: along the back edge of a side, out of its inner face. */
function channel(draft: Draft, frame: CaseFrame, side: DraftPart, hand: Hand, back: RecordOf<'back'>) {
  return {
    id: `${side.id}#${back.id}`,
    purpose: 'for the back',
    face: sideLooking(side.place, hand === 'left' ? '+x' : '-x') as Face,
    edge: sideLooking(side.place, '+y') as Edge,
    ...runOnSide(draft, frame, side),
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
