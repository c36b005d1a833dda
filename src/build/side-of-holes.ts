import type { Traced } from '../measure/index.ts';
import type { Hole, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { fromEdge } from './hole-places.ts';
import { referenceFor } from './words.ts';

/**
 * A door is set by the edge that it hangs on: what belongs to its hinges is measured from there. A sliding door, whose
 * width was found on the bench, has its handle so far from the edge beside it.
 */
export function sideOfHoles(bench: Bench, part: Part, row: readonly Hole[]): ReturnType<typeof referenceFor> {
  const { from, turned } = referenceFor(part, 'start');
  const other = { from: from === 'near' ? 'far' : 'near', turned: !turned } as const;
  const leaf = bench.setOut.doors.find((d) => d.part === part.id);
  if (leaf) return leaf.hung === 'right' ? other : { from, turned };
  const t = (x: Traced) => bench.ledger.ticks(x);
  const beyond = row.every((h) => 2 * t(fromEdge(bench, part, 'start', h.at[1], turned)) > t(part.width));
  return part.cutLater && beyond ? other : { from, turned };
}
