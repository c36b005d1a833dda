import { type Ledger, ticks } from '../../measure/index.ts';
import type { UncutPart } from '../part.ts';
import { placeTicks, type TickBox, toPiece } from '../place.ts';

/**
 * Parts of a chest that lie under a fixed shelf of it, and that shelf: its front is fixed, and from above, through the lid,
 * no hand comes past the shelf. The front and the sides of the chest reach higher.
 */
export function underShelvesOfChests(
  parts: readonly UncutPart[],
  ledger: Ledger,
  comesOut: ReadonlySet<string>,
): ReadonlySet<string> {
  const fronts = parts.filter((p) => p.role === 'front');
  if (fronts.length === 0) return new Set();
  const boxes = new Map(parts.map((p) => [p.id, boxOf(ledger, p)] as const));
  const shelves = parts.filter((p) => p.role.startsWith('shelf') && !comesOut.has(p.id));
  const closed = fronts.flatMap((front) => {
    const before = boxes.get(front.id)!;
    const inChest = parts.filter((p) => {
      const own = boxes.get(p.id)!;
      return meet(own, before, 0) && own.max[1]! > before.max[1]! && own.max[2]! >= before.min[2]!;
    });
    return inChest.filter((part) => {
      const own = boxes.get(part.id)!;
      return shelves.some((shelf) => {
        const above = boxes.get(shelf.id)!;
        return (
          inChest.includes(shelf) &&
          meet(own, above, 0) &&
          own.min[2]! <= above.min[2]! &&
          own.max[2]! <= above.max[2]!
        );
      });
    });
  });
  return new Set(closed.filter((p) => p.role !== 'front').map((p) => p.id));
}

function boxOf(ledger: Ledger, part: UncutPart): TickBox {
  const none = ticks(0);
  const size = [ledger.ticks(part.length), ledger.ticks(part.width), ledger.ticks(part.thickness)] as const;
  return toPiece(placeTicks(ledger, part.place), { min: [none, none, none], max: size });
}

function meet(a: TickBox, b: TickBox, axis: 0 | 1 | 2): boolean {
  return a.min[axis]! < b.max[axis]! && b.min[axis]! < a.max[axis]!;
}
