import type { Lot, RecordOf } from '../../job/index.ts';
import { DRAWERS } from '../../materials/index.ts';
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

/** A centre runner for a depth behind the fronts; a stop where the drawer has nothing to stand on, or the strip doesn't suit. */
export function chooseCentre(draft: Draft, record: RecordOf<'drawers'>, depth: Traced): Carriage | undefined {
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
  const under = l.ticks(bottomPlace(draft).inset);
  const [air, hold] = [l.ticks(l.row(DRAWERS.centreAir)), l.ticks(l.row(DRAWERS.centreHold))];
  // Runner and guides are of one strip: one lies on what is below, the others under the bottom.
  const [least, most] = [(under + hold) / 2, under - air];
  if (l.ticks(thick) < least || l.ticks(thick) > most)
    return refuse(
      'runnerStrip',
      `Strips “${lot.id}” don’t suit a centre runner: under the drawer’s bottom there is room for one from ${Math.ceil(toMm(least as never) * 10) / 10} to ${toMm(most as never)} mm thick.`,
      'Name strips of that thickness.',
    );
  const length = draft.asSawn(
    l.less('depth for the box of a drawer', depth, l.row(DRAWERS.behindBox)),
    'down',
  );
  const board = draft.thickness(draft.lot(record.board));
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
    beside: l.round('as it is marked', l.row(DRAWERS.woodBeside), draft.stepOf('marking'), 'up'),
    lowest: l.row(DRAWERS.lowestBox),
    travel: l.ratio('two thirds of the runner', long, DRAWERS.woodTravel),
    by: { kind: 'centre', strips: { lot, thick, wide } },
  };
}
