import { FillBar, MOST_ENTRIES } from './fill-bar.ts';
import { FillFour } from './fill-four.ts';

/** Pairs of more kinds than this would be too many to look through. */
const MOST_KINDS_FOR_FOUR = 400;

/** Fills one bar, or one sheet, with what is worth most together; `keep` notes the last filling as that of a pattern. */
export interface Fill {
  readonly count: Int32Array;
  readonly value: number;
  readonly work: number;
  solve(worth: Float64Array, most: Int32Array): boolean;
  keep?(pattern: number): void;
}

/** The way to fill a bar that suits: a table while it stays small, else pairs where four pieces are the most. */
export function fillFor(lengths: Int32Array, room: number): Fill {
  const shortest = Math.min(...lengths);
  const fine = lengths.length * (room + 1) > MOST_ENTRIES;
  return fine && room < 5 * shortest && lengths.length <= MOST_KINDS_FOR_FOUR
    ? new FillFour(lengths, room)
    : new FillBar(lengths, room);
}
