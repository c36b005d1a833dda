import type { CaseRecord } from './records/case.ts';

/** One of the two sides of a case. */
type Hand = 'left' | 'right';
/** A panel that lies at two corners of a case. */
type Flat = 'bottom' | 'lid';

const PAST: Readonly<Record<string, readonly Hand[]>> = {
  under: ['left', 'right'],
  over: ['left', 'right'],
  'under-left': ['left'],
  'under-right': ['right'],
  'over-left': ['left'],
  'over-right': ['right'],
};

/** True where a maker lets the bottom or the lid of a case run past one of its sides; at any other corner the side runs through. */
export function runsPast(box: Pick<CaseRecord, Flat>, flat: Flat, hand: Hand): boolean {
  return PAST[box[flat] ?? 'between']?.includes(hand) ?? false;
}

/** What a case says of its bottom or its lid so that this ends at one of its sides, and is as it was at the other. */
export function endsAt(box: Pick<CaseRecord, Flat>, flat: Flat, hand: Hand): string {
  const other = hand === 'left' ? 'right' : 'left';
  return runsPast(box, flat, other) ? `${flat === 'bottom' ? 'under' : 'over'}-${other}` : 'between';
}
