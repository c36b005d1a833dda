import { axisOf, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { overlap, planesOf } from './boxes.ts';

/** Is a panel parallel to the back, with shelves before it? */
export function closesShelves(bench: Bench, panel: Part, shelves: readonly Part[]): boolean {
  return axisOf(panel.place.thickness).axis === 1 && shelves.some((shelf) => isBefore(bench, shelf, panel));
}

/** Does a part stand straight before a panel? */
export function isBefore(bench: Bench, part: Part, panel: Part): boolean {
  const l = bench.ledger;
  const [own, other] = [planesOf(l, part).planes, planesOf(l, panel).planes];
  return (
    l.ticks(own['+y']) <= l.ticks(other['-y']) && overlap(l, part, panel, 0) && overlap(l, part, panel, 2)
  );
}
