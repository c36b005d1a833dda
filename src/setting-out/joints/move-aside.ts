import { SETTING_OUT } from '../../materials/index.ts';
import type { Ledger, Traced } from '../../measure/index.ts';
import type { Cure } from '../../snag/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Spacing } from './screw-spacing.ts';

/** Steps that a row, or a screw of it, may be moved along its joint: the shortest way first. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6];

/** A row of screws that looks for its place. */
export interface Row {
  readonly spacing: Spacing;
  /** The two ends of the joint. */
  readonly low: Traced;
  readonly high: Traced;
  /** The step that the row would rather begin with. */
  readonly first: number;
  /** How far a step moves it; as screws are moved when absent. */
  readonly aside?: Traced;
  /** How far apart (ticks) two must stand that are moved one by one; as screws when absent. */
  readonly apart?: number;
  /** True when a screw at a place (ticks along the joint) meets nothing. */
  readonly isFree: (at: number) => boolean;
}

/**
 * Places for the screws of a joint: all moved by the same steps where that clears them of others, each on its own
 * where it doesn't, and never closer to the ends than the duty allows; by half steps where whole ones find nothing.
 * Undefined when one of them finds no place.
 */
export function clearPlaces(l: Ledger, row: Row): readonly Traced[] | undefined {
  const aside = row.aside ?? l.row(SETTING_OUT.moveAside);
  return placesBy(l, row, aside) ?? placesBy(l, row, l.ratio('half a step aside', aside, SETTING_OUT.half));
}

function placesBy(l: Ledger, row: Row, aside: Traced): readonly Traced[] | undefined {
  const { spacing, low, high, first, isFree } = row;
  const straight = spacing.at.map((from) => l.sum('place of the screw', low, from));
  const step = l.ticks(aside);
  const endLeast = l.ticks(spacing.endLeast);
  const [from, to] = [l.ticks(low) + endLeast, l.ticks(high) - endLeast];
  const isFine = (place: Traced, steps: number) => {
    const at = l.ticks(place) + steps * step;
    // A joint too short for the rule has its screw in the middle, and there it stays.
    return (steps === 0 || (at >= from && at <= to)) && isFree(at);
  };
  const steps = first === 0 ? STEPS : STEPS.map((n) => n + first);
  const together = steps.find((n) => straight.every((place) => isFine(place, n)));
  // Moved one by one, two of them must not come to the same place.
  const apart = row.apart ?? 2 * l.ticks(l.row(SETTING_OUT.moveAside));
  if (together === 0) return straight;
  if (together !== undefined) return straight.map((place) => movedAside(l, place, together, aside));
  const places: Traced[] = [];
  for (const place of straight) {
    const beside = (at: number) => places.every((p) => Math.abs(l.ticks(p) - at) >= apart);
    const n = steps.find((k) => isFine(place, k) && beside(l.ticks(place) + k * step));
    if (n === undefined) return undefined;
    places.push(movedAside(l, place, n, aside));
  }
  return places;
}

function movedAside(l: Ledger, place: Traced, steps: number, step: Traced): Traced {
  if (steps === 0) return place;
  const aside = l.times('steps aside', step, Math.abs(steps));
  const reason = 'place of the screw, moved clear of another';
  return steps > 0 ? l.sum(reason, place, aside) : l.less(reason, place, aside);
}

/** Says that no place was found for the screws of a joint. */
export function screwsMeet(draft: Draft, part: DraftPart, mate: DraftPart): void {
  draft.snags.push({
    code: 'screws.meet',
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `Screws from the ${part.name} into the ${mate.name} find no place: they would meet others, or no driver would reach them.`,
    rule: { says: 'screws keep 2 mm of wood between them', source: 'common practice', confirmed: false },
    cures: [...setBackElsewhere(draft, mate), { says: 'Move one of the parts by its own thickness.' }],
  });
}

/** Distances (mm) at which a base mostly finds its screws a place, clear of what is let into a bottom in front. Our own choice. */
const SETBACKS = [50, 70];

/** What stands under a bottom may stand further in. */
function setBackElsewhere(draft: Draft, { record }: DraftPart): readonly Cure[] {
  const base = draft.tree.get(record);
  if (base?.kind !== 'base') return [];
  return SETBACKS.map((mm) => ({
    says: `Set the base back by ${mm} mm, clear of what is bored or let into the bottom.`,
    edits: [{ record, field: 'setback', value: `${mm} mm` }],
  }));
}
