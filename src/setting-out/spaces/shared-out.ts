import type { OpeningSize } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** Something that takes its part of a length: fixed, or a weight of what the fixed ones leave. */
export interface Claim {
  readonly asked: OpeningSize;
  /** What it measures or was given; undefined where it takes a share. */
  readonly fixed: Traced | undefined;
}

/** What came of sharing out a length: a size for each claim, or what is wrong. */
export type SharedOut =
  | { readonly sizes: readonly Traced[] }
  /** All are fixed, and so many ticks are left over, or lacking where it is less than nothing. */
  | { readonly wrong: 'does-not-add-up'; readonly left: number }
  | { readonly wrong: 'no-room' };

/** Shares a length among claims: fixed ones as they are, the rest by their weights. `taken` is what stands between them. */
export function shareOut(
  draft: Draft,
  words: { readonly clear: string; readonly share: string; readonly uneven: string },
  total: Traced,
  taken: readonly Traced[],
  claims: readonly Claim[],
): SharedOut {
  const l = draft.ledger;
  const fixed = claims.map((c) => c.fixed).filter((f) => f !== undefined);
  const clear = l.less(words.clear, total, ...taken, ...fixed);
  const weights = claims.flatMap((c) =>
    c.fixed === undefined && 'weight' in c.asked ? [c.asked.weight] : [],
  );
  const left = l.ticks(clear);
  if (weights.length === 0 && left !== 0) return { wrong: 'does-not-add-up', left };
  const word = weights.every((w) => w === weights[0]) ? words.share : words.uneven;
  let shared = 0;
  const sizes = claims.map((c) => c.fixed ?? l.share(word, clear, weights, shared++));
  return sizes.every((size) => draft.isSome(size)) ? { sizes } : { wrong: 'no-room' };
}
