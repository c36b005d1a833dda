import type { Ledger } from '../measure/index.ts';
import type { Part } from './part.ts';
import { boxTicks, type TickBox, type TracedBox } from './place.ts';

/** A part with the box it fills in the piece. */
interface Boxed extends Part {
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
): readonly (readonly [Part, Part])[] {
  const boxes = parts.map((p) => ({ part: p, box: boxTicks(ledger, p.box) }));
  // Sorted by their left side, a part needs comparing only with those that begin before it ends.
  boxes.sort((a, b) => a.box.min[0] - b.box.min[0] || (a.part.id < b.part.id ? -1 : 1));
  const pairs: [Part, Part][] = [];
  boxes.forEach((a, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k]!.box.min[0] < a.box.max[0]; k++) {
      const b = boxes[k]!;
      if (!shareVolume(a.box, b.box)) continue;
      if (mitred.has(pairKey(a.part.id, b.part.id))) continue;
      // A back lies inside the rabbets of the sides: their boxes overlap by the rabbet, their wood doesn't.
      if (liesInRabbet(a.part, b.part) || liesInRabbet(b.part, a.part)) continue;
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

function liesInRabbet(part: Part, other: Part): boolean {
  return part.features.some((f) => f.kind === 'rabbet' && f.id.endsWith(`#${other.record}`));
}
