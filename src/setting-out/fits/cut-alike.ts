import { FIT_LIMITS } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { addFit, cut } from './fit.ts';

/** Parts that must be of one length, so that a case stands square: cut at one setting, and like the one that is made. */
export function alike(draft: Draft, parts: readonly DraftPart[]): void {
  const l = draft.ledger;
  const [first] = parts;
  const same = parts.filter((p) => !p.rough && l.ticks(p.length) === l.ticks(first!.length));
  if (same.length < 2) return;
  const more = draft.alike.filter((group) => group.some((p) => same.includes(p)));
  const merged = [...new Set([...more.flat(), ...same])];
  draft.alike = [...draft.alike.filter((group) => !more.includes(group)), merged];
}

/** Fits of parts that were made and should have come out alike: only those are told that differ too much. */
export function fitsOfAlike(draft: Draft): void {
  const l = draft.ledger;
  for (const group of draft.alike) {
    const made = group.filter((p) => draft.made(p, 'length') !== undefined);
    const [one, ...others] = made;
    for (const other of others) {
      const off = l.ticks(draft.made(one!, 'length')!) - l.ticks(draft.made(other, 'length')!);
      if (Math.abs(off) <= l.ticks(l.row(FIT_LIMITS.tooLong))) continue;
      addFit(draft, {
        id: `${other.id}/alike`,
        kind: 'panel',
        name: `the ${other.name} beside the ${one!.name}, as long as that`,
        gap: l.less('how much longer one is', one!.length, other.length),
        least: l.times('what it may be too long by, less than nothing', l.row(FIT_LIMITS.tooLong), -1),
        most: l.row(FIT_LIMITS.tooLong),
        loop: [cut(draft, one!, 'length', 1), cut(draft, other, 'length', -1)],
        toFit: other.id,
      });
    }
  }
}
