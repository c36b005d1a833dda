import { type Ledger, ticks } from '../../measure/index.ts';
import type { UncutPart } from '../part.ts';
import { axisOf, placeTicks, type TickBox, toPiece } from '../place.ts';

/**
 * Parts of a chest that lie under a fixed shelf of it, and that shelf: its front is fixed, and from above, through the lid,
 * no hand comes past the shelf. The front, the back and the sides reach higher: they count where most of them is below it.
 */
export function underShelvesOfChests(
  parts: readonly UncutPart[],
  ledger: Ledger,
  comesOut: ReadonlySet<string>,
): ReadonlySet<string> {
  const fronts = parts.filter((p) => p.role === 'front' && !comesOut.has(p.id));
  if (fronts.length === 0) return new Set();
  const boxes = new Map(parts.map((p) => [p.id, boxOf(ledger, p)] as const));
  const isShelf = (p: UncutPart) => /^(shelf|divider)/.test(p.role) && axisOf(p.place.thickness).axis === 2;
  const closed = fronts.flatMap((front) => {
    const before = boxes.get(front.id)!;
    const inChest = parts.filter((p) => {
      const own = boxes.get(p.id)!;
      return touch(own, before, 0) && own.max[1] >= before.max[1] && own.max[2] >= before.min[2];
    });
    const shelves = inChest.filter((p) => isShelf(p) && !comesOut.has(p.id)).map((p) => boxes.get(p.id)!);
    return inChest.filter((part) => {
      const own = boxes.get(part.id)!;
      return shelves.some((shelf) => isUnder(own, shelf) || isMostlyUnder(own, shelf, before.min[2]));
    });
  });
  return new Set(closed.map((p) => p.id));
}

/** Whether a part ends no higher than a shelf over it, or is that shelf. */
function isUnder(own: TickBox, shelf: TickBox): boolean {
  return meet(own, shelf, 0) && own.min[2] <= shelf.min[2] && own.max[2] <= shelf.max[2];
}

/** Whether more than half of an upright panel's face is beside the space between the floor of the chest and a shelf. */
function isMostlyUnder(own: TickBox, shelf: TickBox, floor: number): boolean {
  const space: readonly (readonly [number, number])[] = [
    [shelf.min[0], shelf.max[0]],
    [shelf.min[1], shelf.max[1]],
    [floor, shelf.min[2]],
  ];
  const sizes = own.max.map((far, k) => far - own.min[k]!);
  const thickness = sizes.indexOf(Math.min(...sizes));
  // The side of a neighbour may touch the front, and not the shelf.
  if (thickness === 2 || !touch(own, shelf, 0)) return false;
  const shares = sizes.map((size, k) =>
    k === thickness ? 1 : (Math.min(own.max[k]!, space[k]![1]) - Math.max(own.min[k]!, space[k]![0])) / size,
  );
  return shares.every((share) => share > 0) && shares.reduce((all, share) => all * share, 1) > 1 / 2;
}

function boxOf(ledger: Ledger, part: UncutPart): TickBox {
  const none = ticks(0);
  const size = [ledger.ticks(part.length), ledger.ticks(part.width), ledger.ticks(part.thickness)] as const;
  return toPiece(placeTicks(ledger, part.place), { min: [none, none, none], max: size });
}

/** The same of those that end where the other begins: sides between which a front stands. */
function touch(a: TickBox, b: TickBox, axis: 0 | 1 | 2): boolean {
  return a.min[axis] <= b.max[axis] && b.min[axis] <= a.max[axis];
}

function meet(a: TickBox, b: TickBox, axis: 0 | 1 | 2): boolean {
  return a.min[axis] < b.max[axis] && b.min[axis] < a.max[axis];
}
