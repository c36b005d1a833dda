import { axisOf, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { overlap, planesOf } from './boxes.ts';
import { type CaseBox, marked } from './case-units.ts';
import { driverFor } from './driver-for.ts';
import type { Standing } from './seating.ts';

/** Is a panel parallel to the back, with shelves that must be in before it? */
export function closesShelves(bench: Bench, panel: Part, shelves: readonly Part[]): boolean {
  return axisOf(panel.place.thickness).axis === 1 && shelves.some((shelf) => mustBeIn(bench, shelf, panel));
}

/** Must a shelf be in before a panel: does it stand before that, or would no driver get past it at the shelf’s screws? */
export function mustBeIn(bench: Bench, shelf: Part, panel: Part): boolean {
  return isBefore(bench, shelf, panel) || barsScrews(bench, shelf, panel);
}

/** Would a panel stand where a driver goes at the pockets by which a shelf is held, its own or those of uprights under it? */
function barsScrews(bench: Bench, shelf: Part, panel: Part): boolean {
  const own = bench.setOut.joints.filter(
    (j) =>
      j.hold === 'pocket-screws' &&
      (j.part === shelf.id || j.mate === shelf.id) &&
      j.part !== panel.id &&
      j.mate !== panel.id,
  );
  return own.some((j) =>
    j.fasteners.some((id) => {
      const screw = bench.setOut.fasteners.find((f) => f.id === id)!;
      return driverFor(bench, screw, []) !== undefined && driverFor(bench, screw, [panel]) === undefined;
    }),
  );
}

/** Panels parallel to the back, of those that are not there, with all that they are screwed to: behind a back no driver gets at them. */
export function screwedFromBehind(
  bench: Bench,
  standing: Standing,
  uprights: readonly Part[],
): readonly Part[] {
  const held = (panel: Part) =>
    bench.setOut.joints.filter((j) => j.part === panel.id && j.hold === 'pocket-screws');
  return uprights.filter(
    (p) =>
      axisOf(p.place.thickness).axis === 1 &&
      !standing.has(p.id) &&
      held(p).length > 0 &&
      held(p).every((j) => standing.has(j.mate)),
  );
}

/** Does a part stand straight before a panel? */
export function isBefore(bench: Bench, part: Part, panel: Part): boolean {
  const l = bench.ledger;
  const [own, other] = [planesOf(l, part).planes, planesOf(l, panel).planes];
  return (
    l.ticks(own['+y']) <= l.ticks(other['-y']) && overlap(l, part, panel, 0) && overlap(l, part, panel, 2)
  );
}

/** Rails stand before a back; the strip of a cleat comes behind it. */
export function beforeBack({ setOut }: Bench, box: CaseBox): readonly Part[] {
  return marked(box, 'T').filter((p) => !setOut.cleats.some((c) => c.onCase === p.id || c.spacer === p.id));
}
