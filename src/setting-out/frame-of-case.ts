import type { Lot, RecordOf } from '../job/index.ts';
import type { Traced } from '../measure/index.ts';
import { caseOf, type Draft } from './draft.ts';

/**
 * The planes a case is hung on, worked inward from the overall sizes so that those come out exactly as asked.
 * Coordinates are the piece's: x from its left, y from its front, z from the floor.
 */
export interface CaseFrame {
  readonly piece: RecordOf<'piece'>;
  readonly box: RecordOf<'case'>;
  readonly lot: Lot;
  readonly board: Traced;
  readonly overall: { readonly width: Traced; readonly height: Traced; readonly depth: Traced };
  readonly top: RecordOf<'top'> | undefined;
  readonly base: RecordOf<'base'> | undefined;
  readonly back: RecordOf<'back'> | undefined;
  readonly edging: RecordOf<'edging'> | undefined;
  /** Outer left, right, front (edging included) and back of the case. */
  readonly left: Traced;
  readonly right: Traced;
  readonly front: Traced;
  readonly rear: Traced;
  /** Underside and upper end of the case's uprights. */
  readonly foot: Traced;
  readonly head: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  readonly uprightHeight: Traced;
  /** What the front edging adds; nothing without. */
  readonly edgingThickness: Traced;
  readonly backThickness: Traced;
  /** How deep a place the back has behind the panels inside: its thickness, or the rabbet that takes it. */
  readonly backRoom: Traced;
  /** Where the panels' own front begins. */
  readonly panelFront: Traced;
  /** The clear space between the panels; as deep as the panels inside. */
  readonly insideWidth: Traced;
  readonly insideHeight: Traced;
  readonly insideDepth: Traced;
}

/** Works out the planes of the case, each when it is first asked for: a formula may rest on one that comes before it. */
export function frameOfCase(draft: Draft): CaseFrame {
  const l = draft.ledger;
  const { piece, box } = caseOf(draft);
  const top = draft.tree.childOf(box.id, 'top');
  const base = draft.tree.childOf(box.id, 'base');
  const back = draft.tree.childOf(box.id, 'back');
  const edging = draft.tree.childOf(box.id, 'edging');
  const lot = draft.lot(box.board);
  const overall = asAsked<CaseFrame['overall']>({
    width: () => draft.field(piece, 'width'),
    height: () => draft.field(piece, 'height'),
    depth: () => draft.field(piece, 'depth'),
  });
  const behind = () => (top ? draft.field(top, 'overhangBack') : draft.nothing);
  const topThickness = () => (top ? draft.thickness(draft.lot(top.board)) : draft.nothing);
  const planes: Planes = asAsked<Planes>({
    board: () => draft.thickness(lot),
    left: () => (top ? draft.field(top, 'overhangSides') : draft.nothing),
    right: () => l.less('right side of the case, inside the top’s overhang', overall.width, planes.left),
    front: () => (top ? draft.field(top, 'overhangFront') : draft.nothing),
    rear: () => l.less('back of the case, inside the top’s overhang', overall.depth, behind()),
    foot: () => (base ? draft.field(base, 'height') : draft.nothing),
    head: () => l.less('underside of the top', overall.height, topThickness()),
    width: () =>
      l.less('width of the case, inside the top’s overhang', overall.width, planes.left, planes.left),
    depth: () => l.less('depth of the case, under the top’s overhang', overall.depth, planes.front, behind()),
    uprightHeight: () =>
      l.less('height of the sides, between base and top', overall.height, planes.foot, topThickness()),
    edgingThickness: () => (edging ? draft.thickness(draft.lot(edging.strip)) : draft.nothing),
    backThickness: () => (back ? draft.thickness(draft.lot(back.board)) : draft.nothing),
    // A rabbet is set to a step of the router, and a back must go in: what the step adds stays behind the back.
    backRoom: () =>
      back?.fitting === 'rabbet'
        ? l.round('as fine as the router is set', planes.backThickness, draft.stepOf('router'), 'up')
        : planes.backThickness,
    panelFront: () =>
      l.sum('where the panels begin, behind the edging', planes.front, planes.edgingThickness),
    insideWidth: () => l.less('clear width between the sides', planes.width, planes.board, planes.board),
    insideHeight: () =>
      l.less(
        'clear height inside the case',
        planes.uprightHeight,
        ...(top ? [planes.board] : [planes.board, planes.board]),
      ),
    insideDepth: () =>
      l.less(
        'depth of the panels inside, in front of the back',
        l.less('depth behind the front edging', planes.depth, planes.edgingThickness),
        planes.backRoom,
      ),
  });
  return Object.assign(planes, { piece, box, lot, overall, top, base, back, edging });
}

type Planes = { [K in keyof CaseFrame as CaseFrame[K] extends Traced ? K : never]: CaseFrame[K] };

/** Fields that are worked out when they are first read, and kept. */
function asAsked<T extends object>(ways: { readonly [K in keyof T]: () => T[K] }): T {
  const fields = {} as T;
  for (const key of Object.keys(ways) as (keyof T)[])
    Object.defineProperty(fields, key, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = ways[key]();
        Object.defineProperty(fields, key, { enumerable: true, value });
        return value;
      },
    });
  return fields;
}
