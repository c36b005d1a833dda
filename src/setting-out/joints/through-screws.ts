import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import { type Axis, axisOf, opposite } from '../place.ts';
import type { Bore, Bores } from './bores.ts';
import { inPart, outward, overlapAlong, planeOf, sideLooking } from './contact.ts';
import type { Duty } from './joint.ts';
import { clearPlaces, screwsMeet } from './move-aside.ts';
import type { ChosenPlug } from './plug-choice.ts';
import type { ChosenScrew } from './screw-choice.ts';
import { fromEnds } from './screw-distance.ts';
import { clearanceHole, edgePilot } from './screw-holes.ts';
import { spaceScrews } from './screw-spacing.ts';

/** Screws through a face of one part into the edge of another. */
export interface ThroughSpec {
  readonly joint: string;
  readonly part: DraftPart;
  /** The face of the part that lies on the mate; heads are on the other one. */
  readonly side: Face;
  readonly mate: DraftPart;
  readonly mateSide: Edge;
  readonly duty: Duty;
  readonly screw: ChosenScrew;
  /** Sinks the heads under plugs; they are countersunk without. */
  readonly plug?: ChosenPlug | undefined;
  /** A thin panel that lies between them, and that the screws pass: a back. */
  readonly over?: DraftPart | undefined;
  /** True when a driver gets at a head there: in ticks along the joint, and in the piece. */
  readonly isOpen?: (at: number, head: Bore['from']) => boolean;
  /** Set where other joints hold the part already: nothing is said where these find no place. */
  readonly besides?: boolean;
  /** Only the foremost screw of the row. */
  readonly foremost?: true;
}

/**
 * Bores and drives a row of screws: clearance hole and countersink (or a hole for a plug) in the part, pilot in the middle of the mate's
 * edge. Returns the fasteners, in order along the joint; none where no place is clear of others (a stop says so).
 */
export function throughScrews(draft: Draft, bores: Bores, spec: ThroughSpec): readonly string[] {
  const l = draft.ledger;
  const { part, mate, screw, plug, over } = spec;
  const direction = outward(part.place, spec.side);
  const drive = axisOf(direction);
  const { axis: across } = axisOf(mate.place.thickness);
  const along = (3 - drive.axis - across) as Axis;
  const [low, high] = overlapAlong(draft, part, mate, along);
  const half = l.ratio('middle of the edge', mate.thickness, SETTING_OUT.half);
  const line = l.sum('middle of the edge', mate.box.min[across], half);
  const holds = l.less('how deep the screw stands in the edge', screw.length, woodUnder(draft, spec));
  const face = planeOf(part, spec.side === 'show' ? 'under' : 'show');
  const outer = plug ? headUnder(draft, face, drive.sign, plug.depth) : face;
  const farEnd = drive.sign > 0 ? mate.box.max[drive.axis] : mate.box.min[drive.axis];
  const spare =
    drive.sign > 0
      ? l.less('wood left beyond the screw', farEnd, outer, screw.length)
      : l.less('wood left beyond the screw', outer, farEnd, screw.length);
  const [outerTicks, lineTicks] = [l.ticks(outer), l.ticks(line)];
  const head = (place: number): Bore['from'] => {
    const at: [number, number, number] = [0, 0, 0];
    at[drive.axis] = outerTicks;
    at[along] = place;
    at[across] = lineTicks;
    return at;
  };
  const boresFrom = boresOf(draft, spec, drive);
  const spacing = spaceScrews(
    l,
    spec.duty,
    l.less('length of the joint', high, low),
    l.row(SETTING_OUT.setStep),
    fromEnds(draft, mate, along, screw.diameter),
  );
  const placesOf = (at: readonly Traced[]) =>
    clearPlaces(l, {
      spacing: { ...spacing, at },
      low,
      high,
      first: 0,
      isFree: (x) => !boresFrom(head(x)).some((b) => bores.meets(b)) && (spec.isOpen?.(x, head(x)) ?? true),
    });
  // A foot is glued as well: one screw holds it until then, where there is no place for two.
  const row =
    placesOf(spec.foremost ? spacing.at.slice(0, 1) : spacing.at) ??
    (spec.duty === 'foot' ? firstOf(spacing.at, (at) => placesOf([at])) : undefined);
  if (!row && !spec.besides) screwsMeet(draft, part, mate);
  const [clearance, pilot] = [clearanceHole(draft, screw), edgePilot(draft, screw, draft.lot(mate.lot))];
  // What the screws of a row have in common, they share.
  const [intoMate, fromPart] = [`screw into the ${mate.name}`, `screw from the ${part.name}`];
  const [inPartId, inMateId] = [`${part.id}#${mate.id}:`, `${mate.id}#${part.id}:`];
  const through = [part.id, ...(over ? [over.id] : []), mate.id];
  const headSide = spec.side === 'show' ? 'under' : 'show';
  return (row ?? []).map((place, i) => {
    const n = i + 1;
    for (const b of boresFrom(head(l.ticks(place)))) bores.add(b);
    const at: [Traced, Traced, Traced] = [outer, outer, outer];
    at[along] = place;
    at[across] = line;
    part.features.push({
      kind: 'hole',
      use: 'clearance',
      id: `${inPartId}${n}`,
      purpose: intoMate,
      side: headSide,
      at: onFaceOf(draft, part, { along, place, line }),
      diameter: clearance,
      ...(plug
        ? { counterbore: { diameter: plug.diameter, depth: plug.depth } }
        : { countersink: screw.head }),
    });
    mate.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${inMateId}${n}`,
      purpose: fromPart,
      side: spec.mateSide,
      at: [
        inPart(draft, mate, along, place, 'pilot along the edge'),
        inPart(draft, mate, across, line, 'pilot up from the under face'),
      ],
      diameter: pilot,
      depth: holds,
    });
    if (over)
      over.features.push({
        kind: 'hole',
        use: 'clearance',
        id: `${over.id}#${part.id}>${mate.id}:${n}`,
        purpose: `screw from the ${part.name} into the ${mate.name}`,
        side: sideLooking(over.place, opposite(direction)) as Face,
        at: onFaceOf(draft, over, { along, place, line }),
        diameter: clearance,
      });
    const id = `${spec.joint}:${n}`;
    draft.fasteners.push({
      id,
      joint: spec.joint,
      screw: screw.screw.id,
      through,
      head: at,
      direction,
      length: screw.length,
      diameter: screw.diameter,
      ...(plug ? { plug: plug.plug } : {}),
      holds,
      spare,
    });
    return id;
  });
}

/** A place on a row of screws, as a place on the face of a part that they go through. */
function onFaceOf(
  draft: Draft,
  part: DraftPart,
  { along, place, line }: { readonly along: Axis; readonly place: Traced; readonly line: Traced },
): readonly [Traced, Traced] {
  const on = (of: 'length' | 'width', reason: string) => {
    const { axis } = axisOf(part.place[of]);
    return inPart(draft, part, axis, axis === along ? place : line, reason);
  };
  return [on('length', `hole along the ${part.name}`), on('width', `hole across the ${part.name}`)];
}

function firstOf<T, R>(of: readonly T[], find: (x: T) => R | undefined): R | undefined {
  for (const x of of) {
    const found = find(x);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The screw, and the hole for its plug if it has one, as bores from where the head is. */
function boresOf(
  draft: Draft,
  { part, mate, screw, plug, over }: ThroughSpec,
  drive: { readonly axis: Axis; readonly sign: 1 | -1 },
): (head: Bore['from']) => readonly Bore[] {
  const l = draft.ledger;
  const both = [part.id, ...(over ? [over.id] : []), mate.id];
  const first = [part.id];
  const long = drive.sign * l.ticks(screw.length);
  const radius = l.ticks(screw.diameter) / 2;
  const sunk = plug && { deep: -drive.sign * l.ticks(plug.depth), radius: l.ticks(plug.diameter) / 2 };
  return (from) => {
    const shank: Bore = { parts: both, from, to: movedAlong(from, drive.axis, long), radius };
    if (!sunk) return [shank];
    return [shank, { parts: first, from, to: movedAlong(from, drive.axis, sunk.deep), radius: sunk.radius }];
  };
}

function movedAlong(from: Bore['from'], axis: Axis, by: number): Bore['from'] {
  const to: [number, number, number] = [from[0], from[1], from[2]];
  to[axis] += by;
  return to;
}

/** The wood between the head and the edge. */
export function woodUnder(
  draft: Draft,
  { part, plug, over }: Pick<ThroughSpec, 'part' | 'plug' | 'over'>,
): Traced {
  const l = draft.ledger;
  const wood = over
    ? l.sum('wood before the edge, with the back between', part.thickness, over.thickness)
    : part.thickness;
  return plug ? l.less('wood under the head, below the plug', wood, plug.depth) : wood;
}

function headUnder(draft: Draft, face: Traced, sign: 1 | -1, depth: Traced): Traced {
  const reason = 'head of the screw, under its plug';
  return sign > 0 ? draft.ledger.sum(reason, face, depth) : draft.ledger.less(reason, face, depth);
}
