import type { Lot, RecordOf } from '../../job/index.ts';
import { GLUED_PANELS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import { movementOfTop } from '../case/free-top.ts';
import type { Draft, DraftPart, PanelSpec, Triple } from '../draft.ts';

/** Boards of one panel. */
const MOST_BOARDS = 40;

/** How thick a board of a lot is in the piece: as it measures, or planed flat where it is glued up from strips. */
export function finishedThickness(draft: Draft, lot: Lot): Traced {
  const l = draft.ledger;
  const thickness = draft.thickness(lot);
  if (lot.form === 'sheet') return thickness;
  const flat = l.less('thickness once it is planed flat', thickness, l.row(GLUED_PANELS.flattening));
  return l.round('as fine as it is measured', flat, draft.stepOf('marking'), 'down');
}

/**
 * A panel that lies flat, its grain to the right: cut from a sheet, or glued up from boards where its lot is strips.
 * Undefined where no boards make it (a stop says so).
 */
export function panelOrBoards(
  draft: Draft,
  record: RecordOf<'top'>,
  spec: PanelSpec & { readonly length: '+x'; readonly width: '+y' },
): DraftPart | undefined {
  return spec.lot.form === 'sheet' ? draft.panel(spec) : gluedUp(draft, record, spec);
}

function gluedUp(draft: Draft, record: RecordOf<'top'>, spec: PanelSpec): DraftPart | undefined {
  const l = draft.ledger;
  const { lot } = spec;
  const [long, wide, thick] = spec.size;
  const stripWidth = draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!);
  const edge = l.row(GLUED_PANELS.jointing);
  const jointed = l.round(
    'as fine as it is marked',
    l.less('width of a board, both edges planed', stripWidth, edge, edge),
    draft.stepOf('marking'),
    'down',
  );
  const over = l.row(GLUED_PANELS.overEdges);
  const least = l.sum('width to glue up at the least', wide, over, over);
  const count = Math.ceil(l.ticks(least) / Math.max(1, l.ticks(jointed)));
  if (
    l.ticks(jointed) < l.ticks(l.row(GLUED_PANELS.leastBoard)) ||
    count > MOST_BOARDS ||
    !draft.isSome(thick)
  ) {
    draft.stop(
      'top.boards-too-small',
      record,
      'board',
      `“${lot.name}” is too narrow or too thin to glue up “${record.id}” from.`,
      { says: 'Name a lot of wider or thicker boards.' },
    );
    return undefined;
  }
  if (!record.hinged && !movementOfTop(draft, record)) {
    draft.stop(
      'top.movement-unknown',
      record,
      'board',
      `“${record.id}” is glued up from “${lot.name}”, a wood whose movement is in no table, so nobody can say how much room its screws need.`,
      {
        says: 'Name as its material the nearest wood that is in the tables: of the same kind, and no lighter.',
      },
    );
    return undefined;
  }
  const panel = draft.panel({ form: 'sheet', ...spec });
  const ends = l.row(GLUED_PANELS.overEnds);
  // What is scribed to walls is laid longer.
  const laid = spec.rough?.length ?? long;
  const length = l.sum('length of the boards, with what is cut off later', laid, ends, ends);
  const width = l.times('width of the boards together', jointed, count);
  const more = l.less('what is ripped off, both edges together', width, wide);
  const near = l.round(
    'as fine as the saw is set',
    l.ratio('half of it in front', more, SETTING_OUT.half),
    draft.stepOf('circular-saw'),
    'down',
  );
  const far = l.less('what is ripped off behind', more, near);
  const thickness = draft.thickness(lot);
  const [left, front, under] = spec.at;
  const before = l.less('front of the boards, before the panel is ripped', front, near);
  const boards = Array.from({ length: count }, (_, i) => {
    const [first, last] = [i === 0, i === count - 1];
    const at: Triple = [
      left,
      first ? front : l.sum('front of the board', before, l.times('boards before it', jointed, i)),
      under,
    ];
    const finished =
      first || last
        ? l.less('what the saw leaves of it', jointed, ...(first ? [near] : []), ...(last ? [far] : []))
        : jointed;
    return draft.panel({
      record: spec.record,
      role: `${spec.role}-board:${i + 1}`,
      name: count > 1 ? `board ${i + 1} of the ${spec.name}` : `board of the ${spec.name}`,
      family: 'panel board',
      lot,
      at,
      size: [long, finished, thick],
      length: '+x',
      width: '+y',
      rough: { length, width: stripWidth, thickness },
      apart: true,
    });
  });
  draft.gluedPanels.push({
    panel: panel.id,
    boards,
    jointed,
    raw: { length, width, thickness },
    off: { near, start: ends },
  });
  return panel;
}
