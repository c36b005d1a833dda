import type { RecordOf, Runner } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** A pair of runners with their sizes. */
export interface ChosenRunner {
  readonly runner: Runner;
  readonly length: Traced;
  readonly thickness: Traced;
  readonly height: Traced;
  readonly screwLength: Traced;
  readonly screwDiameter: Traced;
  readonly pilot: Traced;
  readonly caseScrews: readonly Traced[];
  readonly drawerScrews: readonly Traced[];
  readonly travel: Traced;
}

/** The runners that a record names, or the longest of the rack for a depth behind the fronts; a stop where none goes in. */
export function chooseRunner(
  draft: Draft,
  record: RecordOf<'drawers'>,
  depth: Traced,
): ChosenRunner | undefined {
  const l = draft.ledger;
  const rack = draft.job.shop.rack.runners ?? [];
  const lengthOf = (r: Runner) => draft.typed(`shop/rack/runners/${r.id}/length`, r.length);
  const free = l.less('depth for the box of a drawer', depth, l.row(DRAWERS.behindBox));
  const fitting = rack
    .filter(
      (r) => (record.runner === undefined || r.id === record.runner) && l.ticks(lengthOf(r)) <= l.ticks(free),
    )
    .sort((a, b) => l.ticks(lengthOf(b)) - l.ticks(lengthOf(a)) || (a.id < b.id ? -1 : 1));
  const [best] = fitting;
  if (best) return sized(draft, best, lengthOf(best));
  const room = Math.max(0, Math.floor(toMm(l.ticks(free))));
  draft.stop(
    'drawers.no-runner',
    record,
    'runner',
    rack.length === 0
      ? `The rack has no runners for “${record.id}”.`
      : `No runner of the rack${record.runner === undefined ? '' : ` called “${record.runner}”`} goes into “${record.parent}”, where a box may be ${room} mm deep.`,
    { says: `Put runners of at most ${room} mm on the rack, or make the piece deeper.` },
  );
  return undefined;
}

function sized(draft: Draft, runner: Runner, length: Traced): ChosenRunner {
  const l = draft.ledger;
  const path = `shop/rack/runners/${runner.id}`;
  const screw = draft.job.shop.rack.screws.find((s) => s.id === runner.screw)!;
  const diameter = draft.typed(`shop/rack/screws/${screw.id}/diameter`, screw.diameter);
  const root = l.ratio('root of the screw', diameter, SETTING_OUT.rootShare);
  const places = (field: 'caseScrews' | 'drawerScrews') =>
    runner[field].map((typed, i) => draft.typed(`${path}/${field}/${i}`, typed));
  return {
    runner,
    length,
    thickness: draft.typed(`${path}/thickness`, runner.thickness),
    height: draft.typed(`${path}/height`, runner.height),
    screwLength: draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length),
    screwDiameter: diameter,
    pilot: l.round(
      'to the nearest bit',
      l.ratio('pilot hole for the screw', root, SETTING_OUT.pilotShare),
      l.row(SETTING_OUT.bitStep),
      'nearest',
    ),
    caseScrews: places('caseScrews'),
    drawerScrews: places('drawerScrews'),
    travel:
      runner.travel === undefined
        ? l.ratio('three quarters of the runner', length, DRAWERS.travelShare)
        : draft.typed(`${path}/travel`, runner.travel),
  };
}
