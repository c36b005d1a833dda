import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { type PartPlanes, planesOf } from './boxes.ts';
import type { Touch } from './operation.ts';
import { edgingOf, offset } from './seating.ts';

/** A top comes so far beyond the left side and the front of a case, edging included, and lies on what is under it. */
export function topTouches(
  bench: Bench,
  top: Part,
  side: PartPlanes,
  under: Part,
): readonly [Touch, Touch, Touch] {
  const l = bench.ledger;
  const edging = edgingOf(bench, side.part, '-y');
  const foremost = edging ? planesOf(l, edging) : side;
  const mine = planesOf(l, top);
  const at = (d: '-x' | '-y', other: PartPlanes): Touch => {
    const strip = edgingOf(bench, top, d);
    const outermost = strip ? planesOf(l, strip) : mine;
    return { ...offset(bench, outermost, d, other), ...(strip ? { part: strip.mark } : {}) };
  };
  return [at('-x', side), at('-y', foremost), { side: '-z', of: under.mark, face: '+z' }];
}
