import { HANDLES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** A machine screw of the rack, with its sizes. */
export interface MachineScrew {
  readonly id: string;
  readonly length: Traced;
  readonly diameter: Traced;
}

/**
 * The longest machine screw of the list, of the thread's own diameter, that stands in it by at least that much and stays
 * clear of its end; those on the rack come before those to buy.
 */
export function machineScrew(
  draft: Draft,
  wood: Traced,
  thread: Traced,
  deep: Traced,
): MachineScrew | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const least = t(wood) + t(thread);
  const most = t(wood) + t(deep) - t(l.row(HANDLES.threadEnd));
  return draft.job.shop.rack.screws
    .filter((s) => s.kind === 'machine')
    .map((s) => ({
      id: s.id,
      owned: (s.have ?? 0) > 0,
      length: draft.typed(`shop/rack/screws/${s.id}/length`, s.length),
      diameter: draft.typed(`shop/rack/screws/${s.id}/diameter`, s.diameter),
    }))
    .filter((s) => t(s.diameter) === t(thread) && t(s.length) >= least && t(s.length) <= most)
    .sort(
      (a, b) => Number(b.owned) - Number(a.owned) || t(b.length) - t(a.length) || (a.id < b.id ? -1 : 1),
    )[0];
}
