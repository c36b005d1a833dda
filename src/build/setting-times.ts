import type { AdhesiveLot, FinishLot } from '../job/index.ts';
import { ADHESIVES, type Adhesive, adhesive } from '../materials/index.ts';
import { finishOf } from '../setting-out/index.ts';
import { timeWords } from './duration-words.ts';

/** How long glue or a coat must be left alone, and the sentence that says who says so. */
export interface SettingTime {
  readonly minutes: number;
  readonly says: string;
}

const BY_OWN = 'the time you entered for this work';

/** The glue of the shop: its first on the rack, or plain white glue where there is none. */
export function glueOf(lots: readonly AdhesiveLot[]): {
  readonly lot: AdhesiveLot | undefined;
  readonly kind: Adhesive;
} {
  const lot = lots[0];
  return { lot, kind: adhesive(lot?.material ?? '') ?? ADHESIVES[0]! };
}

/** In clamps: as the maker entered it, or the label says, or else the longest that is usual for the kind. */
export function clampTime(lots: readonly AdhesiveLot[], own?: number): SettingTime {
  if (own !== undefined)
    return { minutes: own, says: `Leave it in clamps for ${timeWords(own)}, ${BY_OWN}.` };
  const { lot, kind } = glueOf(lots);
  const told = lot?.label?.clampMinutes;
  if (told !== undefined)
    return {
      minutes: told,
      says: `Leave it in clamps for ${timeWords(told)}, as the label of ${lot!.name ?? kind.name} says.`,
    };
  const [least, most] = kind.clampMinutes;
  return {
    minutes: most,
    says: `Leave it in clamps for ${timeWords(most)} (${timeWords(least)} to ${timeWords(most)} is usual for ${kind.name}; the label on the bottle comes first).`,
  };
}

/** From one coat to the next: as the maker entered it, or the label says, or else the longest that is usual for the kind. */
export function coatTime(lots: readonly FinishLot[], own?: number): SettingTime {
  if (own !== undefined) return { minutes: own, says: `Let it dry for ${timeWords(own)}, ${BY_OWN}.` };
  const { lot, kind } = finishOf(lots);
  const told = lot?.label?.recoatHours;
  if (told !== undefined)
    return {
      minutes: Math.round(told * 60),
      says: `Let it dry for ${timeWords(told * 60)}, as the label of ${lot!.name ?? kind.name} says.`,
    };
  const [least, most] = kind.recoatHours;
  return {
    minutes: Math.round(most * 60),
    says: `Let it dry for ${timeWords(most * 60)} (${timeWords(least * 60)} to ${timeWords(most * 60)} is usual for ${kind.name}; the label on the tin comes first).`,
  };
}
