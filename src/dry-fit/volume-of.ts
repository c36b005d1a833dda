import type { Shape, Solids } from '../solid/index.ts';
import { shapeKey } from './shape-key.ts';

// The same joint is looked at over and over: on each way in, and again in each run of the cards.
const KNOWN = new WeakMap<Solids, Map<string, number>>();
/** Beyond so many, what was known is forgotten (our own choice: some megabytes). */
const ENOUGH = 20_000;

/** The volume of a shape, mm³; what was asked before of the same modeller is remembered. */
export function volumeOf(solids: Solids, shape: Shape): number {
  const known = KNOWN.get(solids) ?? new Map<string, number>();
  KNOWN.set(solids, known);
  const key = shapeKey(shape);
  const before = known.get(key);
  if (before !== undefined) return before;
  const volume = solids.within(() => solids.make(shape).volume());
  if (known.size >= ENOUGH) known.clear();
  known.set(key, volume);
  return volume;
}
