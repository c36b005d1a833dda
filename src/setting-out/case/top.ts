import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { stripsTooNarrow } from '../edging/strips-too-narrow.ts';
import { finishedThickness, panelOrBoards } from '../glued/panel-of-boards.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { movementOfTop } from './free-top.ts';
import { type FrameSide, mitredFrame } from './mitred-frame.ts';
import { within } from './site.ts';

/** An applied top: its board, and the strips mitred round it. */
export interface Top {
  readonly board: DraftPart;
  readonly strips: ReadonlyMap<FrameSide, DraftPart>;
}

/** Where a top lies, and over what: its least corner, its sizes with its edging, and what tells it from other tops. */
export interface TopSpec {
  readonly record: RecordOf<'top'>;
  readonly of: string;
  readonly left: Traced;
  readonly front: Traced;
  readonly under: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  /** How much longer it is cut in all, to be scribed to walls. */
  readonly longer?: Traced | undefined;
}

/** The applied top of a case; undefined where it has none or none can be made. */
export function appliedTop(draft: Draft, frame: CaseFrame): Top | undefined {
  const { top, outside, site, head } = frame;
  return (
    top &&
    topWithEdging(draft, {
      record: top,
      of: ofCase(frame),
      left: site.left,
      front: site.front,
      under: head,
      width: outside.width,
      depth: outside.depth,
    })
  );
}

/** A top's board and the strips mitred round it; undefined where nothing is left between them. */
export function topWithEdging(draft: Draft, spec: TopSpec): Top | undefined {
  const { record: top, longer } = spec;
  const l = draft.ledger;
  const lot = draft.lot(top.board);
  const thickness = finishedThickness(draft, lot);
  const sides: readonly FrameSide[] =
    top.edging === undefined
      ? []
      : (top.edgedSides ?? 'front-and-sides') === 'all-round'
        ? ['front', 'left', 'right', 'back']
        : top.edgedSides === 'front'
          ? ['front']
          : ['front', 'left', 'right'];
  const strip = top.edging === undefined ? undefined : draft.lot(top.edging);
  const atEnds = sides.includes('left');
  if (atEnds && movementOfTop(draft, top)) acrossGrain(draft, top);
  const edge = strip ? draft.thickness(strip) : draft.nothing;
  const boardWidth = atEnds
    ? l.less('width of the top’s board, inside its edging', spec.width, edge, edge)
    : spec.width;
  const boardDepth = strip
    ? l.less(
        'depth of the top’s board, inside its edging',
        spec.depth,
        ...sides.filter((s) => s === 'front' || s === 'back').map(() => edge),
      )
    : spec.depth;
  if (!draft.isSome(boardWidth) || !draft.isSome(boardDepth)) {
    draft.stop('top.no-room', top, 'edging', 'The top’s edging leaves no board between.', {
      says: 'Use narrower edging, or make the top larger.',
    });
    return undefined;
  }
  const board = panelOrBoards(draft, top, {
    record: top.id,
    role: 'top',
    name: `${top.hinged ? 'lid' : 'top'}${spec.of}`,
    family: 'top',
    lot,
    at: strip
      ? [
          atEnds ? within(draft, 'left end of the top’s board', spec.left, edge) : spec.left,
          within(draft, 'front of the top’s board', spec.front, edge),
          spec.under,
        ]
      : [spec.left, spec.front, spec.under],
    size: [boardWidth, boardDepth, thickness],
    length: '+x',
    width: '+y',
    ...(longer === undefined
      ? {}
      : {
          rough: {
            length: l.sum('length to cut, before it is scribed', boardWidth, longer),
            width: boardDepth,
            thickness,
          },
        }),
  });
  if (!board) return undefined;
  if (!strip) return { board, strips: new Map() };
  const stripWidth = draft.typed(`shop/rack/lots/${strip.id}/width`, strip.width!);
  const words = { boardsAre: 'the top is', boards: 'the board’s' };
  stripsTooNarrow(draft, { record: top, field: 'edging', lot: strip, thickness, ...words });
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  const strips = mitredFrame(draft, {
    record: top.id,
    stem: 'top edging',
    of: spec.of,
    family: 'top edging',
    lot: strip,
    at: [spec.left, spec.front, spec.under],
    size: [spec.width, spec.depth, thickness],
    thickness: edge,
    sides,
    rough: (length) => ({
      length: l.sum(
        'length to cut before mitring',
        length,
        allowance,
        allowance,
        ...(longer === undefined ? [] : [longer]),
      ),
      width: stripWidth,
      thickness: edge,
    }),
  });
  return { board, strips };
}

/** Strips glued over the ends of solid wood keep it from moving, until one of the two cracks. */
function acrossGrain(draft: Draft, top: RecordOf<'top'>): void {
  draft.snags.push({
    code: 'top.edging-across-grain',
    level: 'mind',
    where: { path: `design/records/${top.id}/edging`, record: top.id },
    sentence: `“${top.id}” is of solid wood: strips glued across its ends keep it from moving, and it cracks or they come off.`,
    rule: {
      says: 'nothing is glued across the grain of a wide board of solid wood',
      source: 'common practice',
      confirmed: true,
    },
    cures: [
      {
        says: 'Leave the edging out: the wood’s own edges can be shaped and finished.',
      },
    ],
  });
}
