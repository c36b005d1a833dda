import type { Feature } from '../feature.ts';
import type { Part } from '../part.ts';

/** Two parts that come off the saw as one blank, are worked together as far as they are alike, and are parted after. */
export interface JoinedBlank<P = Part> {
  /** The case that asks for it. */
  readonly record: string;
  /** What both are parted from; no part of the piece. Its features are those that both share. */
  readonly blank: P;
  /** The part along its near edge, and the one along its far edge. */
  readonly parts: readonly [near: string, far: string];
  /** Features of either part that are made while they hang together. */
  readonly shared: ReadonlySet<Feature>;
}
