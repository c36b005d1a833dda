import type { Traced } from '../measure/index.ts';
import { axisOf, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { overlap, planesOf } from './boxes.ts';
import { driverFor } from './driver-for.ts';
import { isLetIn, type Standing } from './seating.ts';

/** A case whose lid is to come. */
interface UnderLid {
  readonly lids: readonly Part[];
  readonly uprights: readonly Part[];
  readonly sides: readonly Part[];
  /** What is still to be set before the lid. */
  readonly open: readonly Part[];
  /** Those shelves of it that are only screwed in. */
  readonly shelves: readonly Part[];
  /** Backs that are in their grooves before the lid comes. */
  readonly shut: readonly Part[];
  readonly letIn: boolean;
  readonly over: boolean;
}

/** What would stand before the pockets of a lid, and comes when that is on, in the order in which it is set. */
export function afterLid(bench: Bench, of: UnderLid): readonly Part[] {
  const { lids, uprights, open, shelves, shut } = of;
  if (lids.length === 0) return [];
  // Panels parallel to the back.
  const parallel =
    of.letIn || of.over
      ? []
      : uprights.filter((d) => axisOf(d.place.thickness).axis === 1 && open.includes(d));
  // Dividers for trays slide in under it.
  const under = open.filter(
    (d) =>
      isTray(d) &&
      !isClosedIn(bench, d, [...uprights, ...shut]) &&
      lids.some((lid) => hasPockets(bench, lid) && standsIn(bench, d, lid)),
  );
  // So do those over or under a shelf, and the shelf comes before them. Not where a back is in by then, or something stands on it.
  const holding = shut.length > 0 ? [] : shelves.filter((p) => holdsTraysAlone(bench, uprights, p));
  const trays = open.filter((d) => under.includes(d) || holding.some((shelf) => standsIn(bench, d, shelf)));
  const barring = of.letIn ? [] : uprights.filter((d) => open.includes(d) && barsLid(bench, of, d, parallel));
  return [...barring, ...parallel, ...holding, ...trays];
}

/**
 * Would an upright stand where the driver goes that screws a lid to a side, from within a narrow bay? Not where something hangs on it
 * that comes before the lid.
 */
function barsLid(bench: Bench, of: UnderLid, upright: Part, later: readonly Part[]): boolean {
  const { lids, open, shelves } = of;
  const early = open.filter((p) => p !== upright && !shelves.includes(p) && !later.includes(p));
  // What is screwed through its face, or has its pockets against it.
  const holds = bench.setOut.joints.some(({ hold, part, mate }) => {
    const [end, on] = hold === 'pocket-screws' ? [part, mate] : [mate, part];
    return on === upright.id && early.some((p) => p.id === end);
  });
  if (holds || axisOf(upright.place.thickness).axis !== 0) return false;
  const there = [...early.filter((p) => !of.uprights.includes(p)), ...of.sides, ...lids];
  return bench.setOut.joints.some(
    (j) =>
      j.hold === 'pocket-screws' &&
      [lids, of.sides].every((some) => some.some((p) => p.id === j.part || p.id === j.mate)) &&
      j.fasteners.some((id) => {
        const screw = bench.setOut.fasteners.find((f) => f.id === id)!;
        return (
          driverFor(bench, screw, there) !== undefined &&
          driverFor(bench, screw, [...there, upright]) === undefined
        );
      }),
  );
}

/** Dividers for trays that a lid comes down on, together with what it is pegged to; what they stand in below is there. */
export function traysUnder(
  bench: Bench,
  standing: Standing,
  uprights: readonly Part[],
  lid: Part,
): readonly Part[] {
  const isThere = (tray: Part) =>
    bench.setOut.joints.some(
      (j) => j.part === tray.id && j.side === 'start' && isLetIn(j) && standing.has(j.mate),
    );
  return uprights.filter((d) => isTray(d) && standsIn(bench, d, lid) && isThere(d));
}

/** True of a divider for trays. */
export function isTray(part: Part): boolean {
  return part.role.startsWith('tray');
}

/** Does a part stand in a channel of another? */
function standsIn({ setOut }: Bench, part: Part, other: Part): boolean {
  return setOut.joints.some((j) => j.part === part.id && j.mate === other.id && isLetIn(j));
}

/** Is a shelf over or under dividers for trays that can slide in behind it, with nothing else standing on it? */
function holdsTraysAlone(bench: Bench, uprights: readonly Part[], shelf: Part): boolean {
  const trays = uprights.filter((d) => isTray(d) && standsIn(bench, d, shelf));
  const carries = bench.setOut.joints.some(
    (j) => j.mate === shelf.id && uprights.some((d) => !isTray(d) && d.id === j.part),
  );
  return trays.length > 0 && !carries && !trays.some((d) => isClosedIn(bench, d, uprights));
}

/** Is something parallel to the back right behind a divider for trays, so that it can't slide in from there? */
function isClosedIn(bench: Bench, tray: Part, others: readonly Part[]): boolean {
  const { planes: mine } = planesOf(bench.ledger, tray);
  const t = (x: Traced) => bench.ledger.ticks(x);
  return others.some((other) => {
    const { planes } = planesOf(bench.ledger, other);
    return (
      axisOf(other.place.thickness).axis === 1 &&
      t(planes['-y']) >= t(mine['+y']) &&
      ([0, 2] as const).every((axis) => overlap(bench.ledger, other, tray, axis))
    );
  });
}

/** Is a lid held by pocket screws, its own or those of uprights under it? */
function hasPockets({ setOut }: Bench, lid: Part): boolean {
  return setOut.joints.some((j) => j.hold === 'pocket-screws' && (j.part === lid.id || j.mate === lid.id));
}
