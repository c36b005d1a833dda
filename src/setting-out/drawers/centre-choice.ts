import type { Lot, RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Carriage } from './carriage.ts';
import { bottomPlace } from './drawer-box.ts';

/** Strips for a centre runner and its guides. */
export interface CentreChoice {
  readonly lot: Lot;
  /** How high a strip is as it lies flat, and how wide. */
  readonly thick: Traced;
  readonly wide: Traced;
}

/** A centre runner for a depth behind the fronts and a clear width; a stop where the drawer has nothing to stand on, or the strip doesn't suit. */
export function chooseCentre(
  draft: Draft,
  record: RecordOf<'drawers'>,
  depth: Traced,
  clear: Traced,
): Carriage | undefined {
  const l = draft.ledger;
  const refuse = (field: string, sentence: string, ...says: string[]) => {
    draft.stop('drawers.no-centre', record, field, sentence, ...says.map((s) => ({ says: s })));
    return undefined;
  };
  if ((record.count ?? 1) > 1)
    return refuse(
      'count',
      `Each drawer on a centre runner stands on what is below it, and “${record.id}” has ${record.count} with nothing between them.`,
      'Split the opening, so that each drawer has one of its own.',
    );
  if (record.bottomFitting === 'applied')
    return refuse(
      'bottomFitting',
      `A bottom laid under the box of “${record.id}” leaves no room for a centre runner.`,
      'Let the bottom into grooves.',
    );
  if (record.runnerStrip === undefined)
    return refuse(
      'runnerStrip',
      `“${record.id}” is to run on a centre runner, and it isn’t said what that is cut from.`,
      'Name a lot of strips in “runnerStrip”, of hard, straight wood.',
    );
  const lot = draft.lot(record.runnerStrip);
  const [thick, wide] = [draft.thickness(lot), draft.typed(`shop/rack/lots/${lot.id}/width`, lot.width!)];
  const under = bottomPlace(draft).inset;
  // Runner and guides are of one strip: one lies on what is below, the others under the bottom.
  const least = l.ratio(
    'half of the room under the bottom and what guides reach down',
    l.sum('room and what guides reach down', under, l.row(DRAWERS.centreHold)),
    SETTING_OUT.half,
  );
  const most = l.less('room under the bottom', under, l.row(DRAWERS.centreAir));
  if (l.ticks(thick) < l.ticks(least) || l.ticks(thick) > l.ticks(most))
    return refuse(
      'runnerStrip',
      `Strips “${lot.id}” don’t suit a centre runner: under the drawer’s bottom there is room for one from ${Math.ceil(toMm(l.ticks(least)) * 10) / 10} to ${toMm(l.ticks(most))} mm thick.`,
      'Name strips of that thickness.',
    );
  const board = draft.thickness(draft.lot(record.board));
  const step = draft.stepOf('marking');
  const beside = l.round('as it is marked', l.row(DRAWERS.woodBeside), step, 'up');
  const slip = l.row(DRAWERS.centrePlay);
  const inside = l.less('room between the sides of the box', clear, beside, beside, board, board);
  // Places are marked on a grid: each of the guides may come a step further out.
  const across = l.sum('runner, guides and play', wide, wide, wide, slip, slip, step, step);
  if (l.ticks(across) > l.ticks(inside))
    return refuse(
      'runnerStrip',
      `Strips “${lot.id}” are too wide: a runner and its guides take ${Math.ceil(toMm(l.ticks(across)) * 10) / 10} mm, and the box of “${record.id}” is ${Math.max(0, Math.floor(toMm(l.ticks(inside)) * 10) / 10)} mm wide inside.`,
      'Name narrower strips, or make the opening wider.',
    );
  const length = draft.asSawn(
    l.less('depth for the box of a drawer', depth, l.row(DRAWERS.behindBox)),
    'down',
  );
  const long = l.less(
    'length of the runner, behind the box’s front',
    length,
    board,
    l.row(DRAWERS.woodAhead),
  );
  if (l.ticks(long) <= 4 * l.ticks(l.row(DRAWERS.woodScrew)))
    return refuse(
      'carriedBy',
      `“${record.parent}” is too shallow for a centre runner that would guide a drawer.`,
      'Make the piece deeper, or use runners of the rack.',
    );
  return {
    length,
    beside,
    lowest: l.row(DRAWERS.lowestBox),
    travel: l.ratio('two thirds of the runner', long, DRAWERS.woodTravel),
    by: { kind: 'centre', strips: { lot, thick, wide } },
  };
}
