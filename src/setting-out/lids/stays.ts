import { readMoment, type Stay } from '../../job/index.ts';
import type { Draft } from '../draft.ts';

/** Stays of the rack that hold something open, how many, and what they hold together, N m. */
export interface Stays {
  readonly id: string;
  readonly count: number;
  readonly holdNm: number;
}

/** What is to be held open: the record that may name a stay, what it is called, and the moment about its hinges, N m. */
export interface Held {
  readonly record: { readonly id: string; readonly stay?: string | undefined };
  readonly what: string;
  readonly needs: number;
}

/** Stays are fixed at both ends of a lid or a flap, so there are two at most. */
const MOST_STAYS = 2;

/** As many stays as hold it, one or two; nothing where the rack has none, which a check minds. */
export function staysFor(draft: Draft, { record, what, needs }: Held): Stays | 'weak' | undefined {
  const rack = draft.job.shop.rack.stays ?? [];
  const asked = rack.filter((s) => record.stay === undefined || s.id === record.stay);
  const count = (s: Stay) => Math.max(1, Math.ceil(needs / readMoment(s.holds)!));
  const stay = asked.find((s) => count(s) <= MOST_STAYS);
  if (stay)
    return { id: stay.id, count: count(stay), holdNm: hundredths(count(stay) * readMoment(stay.holds)!) };
  const strongest = [...asked].sort((a, b) => readMoment(b.holds)! - readMoment(a.holds)!)[0];
  if (!strongest) return undefined;
  draft.stop(
    'lids.stay-weak',
    record,
    'stay',
    `Two stays “${strongest.id}” hold ${hundredths(2 * readMoment(strongest.holds)!)} N m, but the ${what} needs ${needs} N m when it lies level.`,
    {
      says: `Put stays on the rack that hold at least ${Math.ceil(needs * 5) / 10} N m each, or make the ${what} lighter.`,
    },
  );
  return 'weak';
}

/** To hundredths, as masses and moments are told. */
export function hundredths(x: number): number {
  return Math.round(x * 100) / 100;
}
