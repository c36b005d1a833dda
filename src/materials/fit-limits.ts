import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: 'common practice, from memory' };
}

/** How far a gap may come out from what was drawn before a hand or an eye minds it. */
export const FIT_LIMITS = {
  doorGap: length(
    'fit.door',
    0.5,
    'a gap beside an inset door may come out this much narrower or wider than it was drawn',
  ),
  tooLong: length(
    'fit.panel.long',
    0.5,
    'a panel between two others may be this much too long before it bows what it stands between',
  ),
  tooShort: length(
    'fit.panel.short',
    1,
    'a panel between two others may be this much too short: screws and clamps draw the joint together',
  ),
  looseShelf: length(
    'fit.loose-shelf',
    0.5,
    'a loose shelf needs this much room in all between its uprights, or it must be forced in',
  ),
  dadoLoose: length(
    'fit.dado',
    0.3,
    'a panel that is this much thinner than its dado rattles and glue won’t fill it',
  ),
  liftsIn: length('fit.lift', 0.5, 'a sliding door needs this much room above it while it is lifted in'),
  held: length(
    'fit.held',
    1,
    'a sliding door must stand at least this deep in its upper groove, or it drops out',
  ),
  runs: length('fit.runs', 0.3, 'what runs in a groove needs this much room in its width'),
  wobbles: length('fit.wobbles', 3, 'a door with more room than this in its groove leans and rattles'),
  mitre: length(
    'fit.mitre',
    0.5,
    'opposite strips of a mitred frame may differ by this before a corner opens',
  ),
  measuredStock: length('fit.stock', 0.1, 'stock that was measured differs by this within itself'),
  unmeasuredStrip: length(
    'fit.strip',
    0.5,
    'a strip that was not measured differs by this from what it was sold as',
  ),
  hardware: length('fit.hardware', 0.2, 'hardware that was measured differs by this from piece to piece'),
  rounding: {
    id: 'fit.rounding',
    of: [1, 4],
    says: 'rounding takes at most a quarter of what a gap may lose: the rest is left to the tools',
    source: 'a rule of this program',
  } satisfies RatioRow as RatioRow,
} as const;
