import type { CaseJoints, Lot, RecordOf } from '../../job/index.ts';
import { DOORS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import { asAsked } from '../as-asked.ts';
import type { Draft } from '../draft.ts';
import { finishedThickness } from '../glued/panel-of-boards.ts';
import { buttedBetween, joineryOf } from '../joints/joinery.ts';
import type { Joinery } from '../set-out.ts';
import { edgesFront } from './end-edging.ts';
import { movementOfTop } from './free-top.ts';
import { heightOnLevellers } from './levellers.ts';
import { type Hand, type SideOfCase, sidesOfCase } from './shared-sides.ts';
import { type Site, within } from './site.ts';

/**
 * The planes a case is hung on, worked inward from the place it fills so that its sizes come out exactly as asked.
 * Coordinates are the piece's: x from its left, y from its front, z from the floor.
 */
export interface CaseFrame {
  readonly box: RecordOf<'case'>;
  /** True for the only case of a piece; parts of others are told apart by their case. */
  readonly alone: boolean;
  readonly lot: Lot;
  readonly joints: CaseJoints;
  readonly joinery: Joinery;
  readonly board: Traced;
  /** How thick its lid is, where it has one. */
  readonly lidBoard: Traced;
  /** Its sides: whose they are, and how thick. */
  readonly sides: Readonly<Record<Hand, SideOfCase>>;
  readonly leftBoard: Traced;
  readonly rightBoard: Traced;
  /** The place in the piece that it fills, all that belongs to it included. */
  readonly site: Site;
  /** What the sizes of its site really come to: as asked, but for what was measured inside. */
  readonly outside: { readonly width: Traced; readonly height: Traced; readonly depth: Traced };
  readonly top: RecordOf<'top'> | undefined;
  /** A top that lies between the sides, as its lid. */
  readonly inset: RecordOf<'top'> | undefined;
  /** True where a lid closes it: it has no top, or one of solid wood whose screws must find something to move on. */
  readonly lidded: boolean;
  readonly base: RecordOf<'base'> | undefined;
  /** The back of all of it, or the first of those of its bays: all are fitted alike. */
  readonly back: RecordOf<'back'> | undefined;
  readonly backs: readonly RecordOf<'back'>[];
  readonly edging: RecordOf<'edging'> | undefined;
  readonly doors: readonly RecordOf<'door'>[];
  readonly sliding: readonly RecordOf<'sliding-doors'>[];
  /** Outer left, right, front (edging included) and back of the case. */
  readonly left: Traced;
  readonly right: Traced;
  readonly front: Traced;
  readonly rear: Traced;
  /** Underside and upper end of the case's uprights. */
  readonly foot: Traced;
  readonly head: Traced;
  /** Underside of the bottom, and from there to the head: where the sides run to the floor, above their foot. */
  readonly under: Traced;
  readonly boxHeight: Traced;
  /** How high the base is; nothing without. */
  readonly baseHeight: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  readonly uprightHeight: Traced;
  /** What overlay doors add before the case’s front, with what they stand off it; absent without. */
  readonly doorDepth: Traced | undefined;
  /** What the front edging adds; nothing without. */
  readonly edgingThickness: Traced;
  readonly backThickness: Traced;
  /** How far in from the sides' back edges their rabbets for the back go. */
  readonly backRoom: Traced;
  /** Where the panels' own front begins. */
  readonly panelFront: Traced;
  /** The clear space between the panels; as deep as the panels inside. */
  readonly insideWidth: Traced;
  readonly insideHeight: Traced;
  readonly insideDepth: Traced;
  /** How far behind the back the sides run on, or what the back is laid on stands off the wall: room for a groove’s lip, or for a cleat. */
  readonly backSetIn: Traced;
}

/** Works out the planes of a case, each when it is first asked for: a formula may rest on one that comes before it. */
export function frameOfCase(draft: Draft, box: RecordOf<'case'>, site: Site, alone: boolean): CaseFrame {
  const l = draft.ledger;
  const topmost = draft.tree.childOf(box.id, 'top');
  // One between the sides is a lid of a board of its own.
  const [top, inset] = topmost?.fit === 'inset' ? [undefined, topmost] : [topmost, undefined];
  const base = draft.tree.childOf(box.id, 'base');
  const backs = backsOf(draft, box);
  const [back] = backs;
  const edging = draft.tree.childOf(box.id, 'edging');
  const lot = draft.lot(box.board);
  const joinery = joineryOf(draft.job, box);
  const doors = draft.tree.childrenOf(box.id, 'door');
  const sliding = draft.tree.childrenOf(box.id, 'sliding-doors');
  const beside = () => (top ? draft.field(top, 'overhangSides') : draft.nothing);
  const behind = () => (top ? draft.field(top, 'overhangBack') : draft.nothing);
  const topThickness = () => (top ? finishedThickness(draft, draft.lot(top.board)) : draft.nothing);
  const behindEdging = () => l.less('depth behind the front edging', planes.depth, planes.edgingThickness);
  const root = draft.tree.childOf(box.id, 'opening');
  const sides = sidesOfCase(draft, box);
  const toFloor = base?.form === 'toe-kick';
  const doorDepth = depthOfOverlayDoors(draft, doors, box.id);
  // What was found inside stands before what was drawn outside: there the panels are already made.
  const found = (size: 'width' | 'height') => root && draft.measured(`${root.id}.${size}`);
  const lidded = !top || (movementOfTop(draft, top) !== undefined && top.moves !== 'buttons');
  const panelsAcross = () => (!lidded ? [planes.board] : [planes.board, planes.lidBoard]);
  const planes: Planes = asAsked<Planes>({
    board: () => draft.thickness(lot),
    lidBoard: () => (inset ? draft.thickness(draft.lot(inset.board)) : planes.board),
    leftBoard: () => draft.thickness(draft.lot(sides.left.of.board)),
    rightBoard: () => draft.thickness(draft.lot(sides.right.of.board)),
    left: () => within(draft, 'left side of the case, inside the top’s overhang', site.left, beside()),
    right: () =>
      found('width') !== undefined
        ? l.sum('right side of the case, as measured inside', planes.left, planes.width)
        : l.less(
            'right side of the case, inside the top’s overhang',
            within(draft, 'right end of the case’s place', site.left, site.width),
            beside(),
          ),
    front: () => {
      const overhang = top ? draft.field(top, 'overhangFront') : draft.nothing;
      const behindDoors =
        doorDepth === undefined
          ? overhang
          : l.sum('front of the case, behind its doors', overhang, doorDepth);
      return within(draft, 'front of the case', site.front, behindDoors);
    },
    rear: () =>
      l.less(
        'back of the case, inside the top’s overhang',
        within(draft, 'back of the case’s place', site.front, site.depth),
        behind(),
      ),
    baseHeight: () => heightOfBase(draft, base),
    foot: () =>
      toFloor ? site.floor : within(draft, 'underside of the case', site.floor, planes.baseHeight),
    under: () =>
      toFloor ? within(draft, 'underside of the bottom', site.floor, planes.baseHeight) : planes.foot,
    boxHeight: () =>
      toFloor
        ? l.less('height of the case above its kick board', planes.uprightHeight, planes.baseHeight)
        : planes.uprightHeight,
    head: () =>
      found('height') !== undefined
        ? l.sum('underside of the top, as measured inside', planes.foot, planes.uprightHeight)
        : l.less(
            'underside of the top',
            within(draft, 'upper end of the case’s place', site.floor, site.height),
            topThickness(),
          ),
    width: () => {
      const inside = found('width');
      if (inside !== undefined)
        return l.sum('width of the case, as measured inside', inside, planes.leftBoard, planes.rightBoard);
      return l.less('width of the case, inside the top’s overhang', site.width, beside(), beside());
    },
    depth: () =>
      l.less(
        'depth of the case, under the top’s overhang',
        within(draft, 'back of the case’s place', site.front, site.depth),
        planes.front,
        behind(),
      ),
    uprightHeight: () => {
      const inside = found('height');
      if (inside !== undefined)
        return l.sum(
          'height of the sides, as measured inside',
          inside,
          ...panelsAcross(),
          ...(toFloor ? [planes.baseHeight] : []),
        );
      return l.less(
        'height of the sides, between base and top',
        within(draft, 'upper end of the case’s place', site.floor, site.height),
        planes.foot,
        topThickness(),
      );
    },
    edgingThickness: () =>
      edging && edgesFront({ edging }) ? draft.thickness(draft.lot(edging.strip)) : draft.nothing,
    backSetIn: () => setInOf(draft, leadingOf(backs)),
    backThickness: () => thickestOf(draft, backs),
    // A back lies against the panels inside, so the rabbets must not stop it before: reckoned with the sizes as sawn,
    // and on to the next step of the router.
    backRoom: () =>
      l.round(
        'as fine as the router is set',
        l.less(
          'from the back of the panels inside to that of the sides',
          l.greatest(
            'depth of the sides, as drawn or as sawn',
            behindEdging(),
            draft.asSawn(behindEdging(), 'nearest'),
          ),
          planes.insideDepth,
        ),
        draft.stepOf('router'),
        'up',
      ),
    panelFront: () =>
      l.sum('where the panels begin, behind the edging', planes.front, planes.edgingThickness),
    insideWidth: () =>
      found('width') ??
      l.less(
        buttedBetween('clear width between the sides', joinery),
        planes.width,
        planes.leftBoard,
        planes.rightBoard,
      ),
    insideHeight: () =>
      found('height') ??
      l.less(buttedBetween('clear height inside the case', joinery), planes.boxHeight, ...panelsAcross()),
    insideDepth: () => {
      const depth = l.less(
        'depth of the panels inside, in front of the back',
        behindEdging(),
        planes.backThickness,
        ...(draft.isSome(planes.backSetIn) ? [planes.backSetIn] : []),
      );
      return backs.some((b) => b.fitting === 'rabbet') ? draft.asSawn(depth, 'down') : depth;
    },
  });
  const outside = asAsked<CaseFrame['outside']>({
    // A top stands out as far as it was drawn to.
    width: () =>
      found('width') !== undefined
        ? l.sum('width, as measured inside', beside(), planes.width, beside())
        : site.width,
    height: () =>
      found('height') !== undefined
        ? l.sum(
            'height, as measured inside',
            ...(base && !toFloor ? [planes.baseHeight] : []),
            planes.uprightHeight,
            topThickness(),
          )
        : site.height,
    depth: () => site.depth,
  });
  return Object.assign(planes, {
    outside,
    joints: joinery.joints,
    joinery,
    box,
    alone,
    lot,
    site,
    sides,
    lidded,
    top,
    inset,
    base,
    back,
    backs,
    edging,
    doors,
    sliding,
    doorDepth,
  });
}

type Planes = { [K in keyof CaseFrame as CaseFrame[K] extends Traced ? K : never]: CaseFrame[K] };

function heightOfBase(draft: Draft, base: RecordOf<'base'> | undefined): Traced {
  if (base?.form === 'levellers') return heightOnLevellers(draft, base);
  if (base?.form !== 'feet') return base ? draft.field(base, 'height') : draft.nothing;
  const { id, width } = draft.lot(base.strip!);
  return draft.typed(`shop/rack/lots/${id}/width`, width!);
}

/** The thickest overlay door and what it stands off the case. */
export function depthOfOverlayDoors(draft: Draft, all: CaseFrame['doors'], box: string): Traced | undefined {
  const doors = all.filter((d) => d.hang === 'overlay');
  const drawers = draft.tree
    .all('drawers')
    .filter((d) => d.hang === 'overlay' && draft.tree.caseOf(d.id)?.id === box);
  if (doors.length + drawers.length === 0) return undefined;
  const l = draft.ledger;
  const boards = [...doors.map((d) => d.board), ...drawers.map((d) => d.frontBoard)];
  const thicknesses = boards.map((board) => draft.thickness(draft.lot(board)));
  const thickest =
    thicknesses.length === 1 ? thicknesses[0]! : l.greatest('thickest door or front', ...thicknesses);
  return l.sum('what doors add before the case', thickest, l.row(DOORS.standOff));
}

/** The back of a case, or those of its bays, from the left. */
export function backsOf(draft: Draft, box: RecordOf<'case'>): readonly RecordOf<'back'>[] {
  const own = draft.tree.childOf(box.id, 'back');
  if (own) return [own];
  const root = draft.tree.childOf(box.id, 'opening');
  return root
    ? draft.tree.childrenOf(root.id, 'opening').flatMap((bay) => draft.tree.childOf(bay.id, 'back') ?? [])
    : [];
}

/** The back by which all of a case are set in: one that says how far, or else one in grooves, which need wood behind them. */
function leadingOf(backs: readonly RecordOf<'back'>[]): RecordOf<'back'> | undefined {
  return backs.find((b) => b.setIn !== undefined) ?? backs.find((b) => b.fitting === 'groove') ?? backs[0];
}

function thickestOf(draft: Draft, backs: readonly RecordOf<'back'>[]): Traced {
  const [first, ...others] = backs.map((b) => draft.thickness(draft.lot(b.board)));
  if (first === undefined) return draft.nothing;
  return others.length > 0 ? draft.ledger.greatest('thickest back', first, ...others) : first;
}

function setInOf(draft: Draft, back: RecordOf<'back'> | undefined): Traced {
  if (!back) return draft.nothing;
  const hanging = draft.tree.childOf(draft.tree.caseOf(back.id)!.id, 'hanging');
  const cleat = hanging?.by === 'cleat' ? hanging : undefined;
  // One that is laid on has behind it what the strips of a cleat are thick, and no sides.
  if (back.fitting === 'applied') return cleat ? draft.thickness(draft.lot(cleat.board)) : draft.nothing;
  if (back.setIn !== undefined) return draft.field(back, 'setIn');
  if (back.fitting === 'rabbet') return cleat ? draft.thickness(draft.lot(cleat.board)) : draft.nothing;
  const usual = draft.ledger.row(SETTING_OUT.backSetIn);
  if (!cleat) return usual;
  const l = draft.ledger;
  const strip = draft.thickness(draft.lot(cleat.board));
  // The groove begins a little behind the back.
  const room = l.sum('room behind the back for the cleat', strip, l.row(SETTING_OUT.dadoClear));
  return l.greatest('set in at least as usual', usual, room);
}

/** What tells a case's parts from those of other cases, behind their name; nothing where there is only one. */
export function ofCase({ alone, box }: CaseFrame): string {
  return alone ? '' : ` of ${box.id}`;
}
