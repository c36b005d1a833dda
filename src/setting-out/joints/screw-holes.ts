import type { Lot } from '../../job/index.ts';
import { edgePilotShare, fasteningGravity, SETTING_OUT, woodScrewOf } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { onceADraft } from '../once-a-draft.ts';
import { bitNear } from './bit-choice.ts';
import type { ChosenScrew } from './screw-choice.ts';

/** The pilot for a screw into an edge: a share of its root by the wood’s density, then the nearest bit there is. */
export function edgePilot(draft: Draft, { diameter }: ChosenScrew, into: Lot): Traced {
  const known = pilotsInto(draft, into);
  const pilot = known.get(diameter) ?? pilotOf(draft, diameter, into);
  known.set(diameter, pilot);
  return pilot;
}

/** The pilots into a lot that are known, by the screw’s diameter. */
const pilotsInto = onceADraft((_, __: Lot) => new Map<Traced, Traced>());

function pilotOf(draft: Draft, diameter: Traced, into: Lot): Traced {
  const l = draft.ledger;
  const known = woodScrewOf(l.ticks(diameter))?.root;
  const root = known ? l.row(known) : l.ratio('root of the screw', diameter, SETTING_OUT.rootShare);
  // A wood in no table is reckoned as middling.
  const share = edgePilotShare(fasteningGravity(into.material)?.specificGravity ?? 0);
  const pilot = l.round(
    'to the nearest bit',
    l.ratio('pilot hole for the screw', root, share),
    l.row(SETTING_OUT.bitStep),
    'nearest',
  );
  return bitNear(draft, 'twist', pilot);
}

/** The hole that a screw passes without biting: a little wider than its thread. */
export const clearanceHole = onceADraft((draft, { diameter }: ChosenScrew): Traced => {
  const l = draft.ledger;
  const wide = l.sum('clearance hole for the screw', diameter, l.row(SETTING_OUT.clearanceExtra));
  return bitNear(draft, 'twist', wide, l.ticks(l.row(SETTING_OUT.clearanceExtra)));
});
