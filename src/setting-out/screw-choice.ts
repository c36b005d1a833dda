import type { Screw } from '../job/index.ts';
import { POCKET_HOLE, SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Draft } from './draft.ts';

/** A screw that fits both thicknesses, with its traced sizes. */
export interface ChosenScrew {
  readonly screw: Screw;
  readonly length: Traced;
  readonly diameter: Traced;
  readonly head: Traced;
}

/** The longest screw of a kind on the shop's list that passes `fits`; those on the rack come before those to buy. */
export function longestScrew(
  draft: Draft,
  kind: Screw['kind'],
  fits: (length: number) => boolean,
): ChosenScrew | undefined {
  const sized = draft.job.shop.rack.screws
    .filter((s) => s.kind === kind)
    .map((screw) => ({ screw, length: draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length) }))
    .filter((s) => fits(draft.ledger.ticks(s.length)));
  sized.sort(
    (a, b) =>
      Number((b.screw.have ?? 0) > 0) - Number((a.screw.have ?? 0) > 0) ||
      draft.ledger.ticks(b.length) - draft.ledger.ticks(a.length) ||
      (a.screw.id < b.screw.id ? -1 : 1),
  );
  const best = sized[0];
  return (
    best && {
      ...best,
      diameter: draft.typed(`shop/rack/screws/${best.screw.id}/diameter`, best.screw.diameter),
      head: draft.typed(`shop/rack/screws/${best.screw.id}/head`, best.screw.head),
    }
  );
}

/**
 * The pocket screw for a board of one thickness driven into another: as long as may be without coming closer to
 * the far face than the trade allows, and at most about twice the board's thickness. Boards under 12 mm take none.
 */
export function pocketScrew(draft: Draft, board: Traced, mate: Traced): ChosenScrew | undefined {
  const l = draft.ledger;
  const seat = l.ticks(board);
  if (seat < POCKET_HOLE.thinnest.value) return undefined;
  const [over, under] = SETTING_OUT.pocketLean.of;
  const deepest = l.ticks(mate) - l.ticks(l.row(SETTING_OUT.farFace));
  const leastHold = l.ticks(l.row(SETTING_OUT.leastHold));
  return longestScrew(draft, 'pocket', (length) => {
    const holds = ((length - seat) * over) / under;
    return holds <= deepest && holds >= leastHold && length <= 2 * seat;
  });
}

/** The countersunk screw for a thin panel onto a panel's edge: long enough to hold, at most a third of the edge thick. */
export function edgeScrew(draft: Draft, panel: Traced, edge: Traced): ChosenScrew | undefined {
  const l = draft.ledger;
  const least = l.ticks(panel) + l.ticks(l.row(SETTING_OUT.leastHold));
  const most = l.ticks(panel) + 4 * l.ticks(edge);
  const chosen = longestScrew(draft, 'countersunk', (length) => length >= least && length <= most);
  return chosen && 3 * l.ticks(chosen.diameter) <= l.ticks(edge) ? chosen : undefined;
}
