import type { Ledger } from '../measure/index.ts';
import { isCutAway } from './cut-away.ts';
import type { UncutPart } from './part.ts';
import { boxTicks, type TickBox, type TracedBox } from './place.ts';

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
  return ([0, 1, 2] as const).every((i) => a.min[i] < b.max[i] && b.min[i] < a.max[i]);
}

/** What two boxes have in common; its corners cross where they have nothing. */
export function sharedBox(a: TickBox, b: TickBox): TickBox {
  const pick = (of: (x: number, y: number) => number, end: 'min' | 'max') =>
    ([0, 1, 2] as const).map((i) => of(a[end][i], b[end][i])) as unknown as TickBox['min'];
  return { min: pick(Math.max, 'min'), max: pick(Math.min, 'max') };
}
