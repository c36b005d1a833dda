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
  /** Where the panels' own front begins, and how deep the panels inside are. */
  readonly panelFront: Traced;
  readonly insideDepth: Traced;
}

/** Works out the planes of the case. */
export function frameOfCase(draft: Draft): CaseFrame {
  const l = draft.ledger;
  const { piece, box } = caseOf(draft);
  const top = draft.tree.childOf(box.id, 'top');
  const base = draft.tree.childOf(box.id, 'base');
  const back = draft.tree.childOf(box.id, 'back');
  const edging = draft.tree.childOf(box.id, 'edging');
  const overall = {
    width: draft.field(piece, 'width'),
    height: draft.field(piece, 'height'),
    depth: draft.field(piece, 'depth'),
  };
  const lot = draft.lot(box.board);
  const sides = top ? draft.field(top, 'overhangSides') : draft.nothing;
  const front = top ? draft.field(top, 'overhangFront') : draft.nothing;
  const behind = top ? draft.field(top, 'overhangBack') : draft.nothing;
  const topThickness = top ? draft.thickness(draft.lot(top.board)) : draft.nothing;
  const foot = base ? draft.field(base, 'height') : draft.nothing;
  const edgingThickness = edging ? draft.thickness(draft.lot(edging.strip)) : draft.nothing;
  const backThickness = back ? draft.thickness(draft.lot(back.board)) : draft.nothing;
  const depth = l.less('depth of the case, under the top’s overhang', overall.depth, front, behind);
  const panelDepth = l.less('depth behind the front edging', depth, edgingThickness);
  return {
    piece,
    box,
    lot,
    board: draft.thickness(lot),
    overall,
    top,
    base,
    back,
    edging,
    left: sides,
    right: l.less('right side of the case, inside the top’s overhang', overall.width, sides),
    front,
    rear: l.less('back of the case, inside the top’s overhang', overall.depth, behind),
    foot,
    head: l.less('underside of the top', overall.height, topThickness),
    width: l.less('width of the case, inside the top’s overhang', overall.width, sides, sides),
    depth,
    uprightHeight: l.less('height of the sides, between base and top', overall.height, foot, topThickness),
    edgingThickness,
    backThickness,
    panelFront: l.sum('where the panels begin, behind the edging', front, edgingThickness),
    insideDepth: l.less('depth of the panels inside, in front of the back', panelDepth, backThickness),
  };
}
