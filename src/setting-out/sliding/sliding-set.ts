import type { Traced } from '../../measure/index.ts';

/** One of the doors: its part, and the track that it runs in, counted from the front. */
export interface SlidingLeaf {
  readonly part: string;
  readonly track: number;
  /** How manieth it is from the left, counted from 0. */
  readonly order: number;
  /** The edge that stays in sight, by which it is pushed. */
  readonly inSight: 'left' | 'right';
  /** Set where its handle stands out so far that no door before it passes. */
  readonly bars?: true;
}

/** Doors that slide past one another: where they run, how deep they stand in their grooves, what they close. */
export interface SlidingSet {
  readonly record: string;
  /** Front ones first, within a track from the left. */
  readonly leaves: readonly SlidingLeaf[];
  readonly tracks: number;
  /** What they run on and under, and between: parts by id. */
  readonly below: string;
  readonly above: string;
  readonly left: string;
  readonly right: string;
  /** Clear sizes of what they close. */
  readonly opening: { readonly width: Traced; readonly height: Traced };
  readonly groove: { readonly width: Traced; readonly upper: Traced; readonly lower: Traced };
  /** How much wider the groove is than what runs in it. */
  readonly play: Traced;
  readonly tongue: Traced;
  /** What is left of a door in its upper groove when it is down. */
  readonly engagement: Traced;
  /** How far it is lifted to go in, and what is then left above it. */
  readonly lift: Traced;
  readonly spare: Traced;
  readonly gap: Traced;
  readonly overlap: Traced;
  /** The widest that can be opened at once. */
  readonly opens: Traced;
  /** Whether they close all together, or one opening each. */
  readonly closes: 'all' | 'each';
  /** The sets of openings that the doors can close at once. */
  readonly closable: readonly (readonly string[])[];
}
