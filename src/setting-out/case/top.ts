import { SETTING_OUT } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { type FrameSide, mitredFrame } from './mitred-frame.ts';
import { within } from './site.ts';

/** An applied top: its board, and the strips mitred round it. */
export interface Top {
  readonly board: DraftPart;
  readonly strips: ReadonlyMap<FrameSide, DraftPart>;
}

/** The applied top of a case; undefined where it has none or none can be made. */
export function appliedTop(draft: Draft, frame: CaseFrame): Top | undefined {
  const { top, outside: overall, site } = frame;
  if (!top) return undefined;
  const l = draft.ledger;
  const lot = draft.lot(top.board);
  const thickness = draft.thickness(lot);
  const sides: readonly FrameSide[] =
    top.edging === undefined
      ? []
      : (top.edgedSides ?? 'front-and-sides') === 'all-round'
        ? ['front', 'left', 'right', 'back']
        : ['front', 'left', 'right'];
  const strip = top.edging === undefined ? undefined : draft.lot(top.edging);
  const edge = strip ? draft.thickness(strip) : draft.nothing;
  const boardWidth = strip
    ? l.less('width of the top’s board, inside its edging', overall.width, edge, edge)
    : overall.width;
  const boardDepth = strip
    ? l.less(
        'depth of the top’s board, inside its edging',
        overall.depth,
        ...sides.filter((s) => s === 'front' || s === 'back').map(() => edge),
      )
    : overall.depth;
  if (!draft.isSome(boardWidth) || !draft.isSome(boardDepth)) {
    draft.stop('top.no-room', top, 'edging', 'The top’s edging leaves no board between.', {
      says: 'Use narrower edging, or make the top larger.',
    });
    return undefined;
  }
  const board = draft.panel({
    record: top.id,
    role: 'top',
    name: `top${ofCase(frame)}`,
    family: 'top',
    lot,
    at: strip
      ? [
          within(draft, 'left end of the top’s board', site.left, edge),
          within(draft, 'front of the top’s board', site.front, edge),
          frame.head,
        ]
      : [site.left, site.front, frame.head],
    size: [boardWidth, boardDepth, thickness],
    length: '+x',
    width: '+y',
  });
  if (!strip) return { board, strips: new Map() };
  const stripWidth = draft.typed(`shop/rack/lots/${strip.id}/width`, strip.width!);
  if (l.ticks(stripWidth) < l.ticks(thickness))
    draft.stop(
      'edging.too-narrow',
      top,
      'edging',
      `Strips “${strip.id}” are narrower than the top is thick.`,
      {
        says: 'Choose strips at least as wide as the board’s thickness.',
      },
    );
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  const strips = mitredFrame(draft, {
    record: top.id,
    stem: 'top edging',
    of: ofCase(frame),
    family: 'top edging',
    lot: strip,
    at: [site.left, site.front, frame.head],
    size: [overall.width, overall.depth, thickness],
    thickness: edge,
    sides,
    rough: (length) => ({
      length: l.sum('length to cut before mitring', length, allowance, allowance),
      width: stripWidth,
      thickness: edge,
    }),
  });
  return { board, strips };
}
