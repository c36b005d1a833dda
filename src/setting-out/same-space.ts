import type { Ledger, Ticks } from '../measure/index.ts';
import { isCutAway } from './cut-away.ts';
import type { UncutPart } from './part.ts';
import { type Axis, boxTicks, type TickBox, type TracedBox } from './place.ts';

/** A part with the box it fills in the piece. */
interface Boxed extends UncutPart {
  readonly box: TracedBox;
}

/**
 * Pairs of parts whose boxes share volume, judged in whole ticks. Strips that meet in a mitre share a corner of
 * their boxes and not of their wood, and are left out.
 */
export function partsInTheSameSpace(
  ledger: Ledger,
  parts: readonly Boxed[],
  mitred: ReadonlySet<string>,
): readonly (readonly [Boxed, Boxed])[] {
  const boxes = parts.map((p) => ({ part: p, box: boxTicks(ledger, p.box) }));
  // Sorted by their left side, a part needs comparing only with those that begin before it ends.
  boxes.sort((a, b) => a.box.min[0] - b.box.min[0] || (a.part.id < b.part.id ? -1 : 1));
  const pairs: [Boxed, Boxed][] = [];
  boxes.forEach((a, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k]!.box.min[0] < a.box.max[0]; k++) {
      const b = boxes[k]!;
      if (!shareVolume(a.box, b.box)) continue;
      if (mitred.has(pairKey(a.part.id, b.part.id))) continue;
      // What is let in lies inside a channel of its mate: their boxes overlap by it, their wood doesn't.
      const shared = sharedBox(a.box, b.box);
      if (isCutAway(ledger, [a.part, b.part], shared)) continue;
      pairs.push([a.part, b.part]);
    }
  });
  return pairs;
}

/** One key for a pair, whichever comes first. */
export function pairKey(a: string, b: string): string {
  return a < b ? `${a}|${b}` : `${b}|${a}`;
}

function shareVolume(a: TickBox, b: TickBox): boolean {
  for (let i: Axis = 0; i < 3; i++)
    if (a.min[i as Axis] >= b.max[i as Axis] || b.min[i as Axis] >= a.max[i as Axis]) return false;
  return true;
}

/** What two boxes have in common; its corners cross where they have nothing. */
export function sharedBox(a: TickBox, b: TickBox): TickBox {
  return {
    min: [greater(a.min[0], b.min[0]), greater(a.min[1], b.min[1]), greater(a.min[2], b.min[2])],
    max: [lesser(a.max[0], b.max[0]), lesser(a.max[1], b.max[1]), lesser(a.max[2], b.max[2])],
  };
}

function greater(a: Ticks, b: Ticks): Ticks {
  return a > b ? a : b;
}

function lesser(a: Ticks, b: Ticks): Ticks {
  return a < b ? a : b;
}
