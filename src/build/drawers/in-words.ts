import type { Direction, Drawer, Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import type { PartPlanes } from '../boxes.ts';
import type { Touch } from '../operation.ts';
import { offset } from '../seating.ts';

/** The name of a box while it is one, and no drawer yet. */
export function boxName(bench: Bench, drawer: Drawer): string {
  return `box of ${partOf(bench, drawer.parts.face).mark}`;
}

/** A part of the piece by its id. */
export function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

/** A part as cards call it: its mark, and what it is. */
export function named(part: Part): string {
  return `${part.mark} (${part.name})`;
}

/** A part brought to its place by the planes of another: against it, level with it, or so far from it. */
export function by(bench: Bench, mine: PartPlanes, other: PartPlanes, side: Direction): Touch {
  const l = bench.ledger;
  const face = `${side[0] === '+' ? '-' : '+'}${side[1]}` as Direction;
  const meets = l.ticks(mine.planes[side]) === l.ticks(other.planes[face]);
  return meets ? { side, of: other.part.mark, face } : offset(bench, mine, side, other);
}
