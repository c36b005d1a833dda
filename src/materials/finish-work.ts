import type { Sourced } from './sourced.ts';

/** How finish is reckoned and when a surface can’t be reached any more. */
export const FINISH_WORK = {
  /** What is bought for what is needed: brush, cloth and tin keep some. */
  withWaste: 1.15,
  /** Square metres that one card’s usual minutes are meant for. */
  m2PerCard: 6,
  /** A space narrower than this takes no hand with a cloth, mm. */
  handMm: 120,
  /** So deep a space is out of reach, mm. */
  armMm: 200,
  source: 'common practice; figures from memory',
  confirmed: false,
} as const satisfies Sourced & Record<string, unknown>;
