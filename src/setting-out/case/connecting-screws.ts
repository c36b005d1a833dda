import { SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { type Bore, type Bores, touches } from '../joints/bores.ts';
import { contactBox, inPart, overlapAlong, planeOf, sideLooking } from '../joints/contact.ts';
import { driverRoom } from '../joints/driver-room.ts';
import type { Joint } from '../joints/joint.ts';
import { clearPlaces, type Row } from '../joints/move-aside.ts';
import { type ChosenScrew, connectingScrew } from '../joints/screw-choice.ts';
import { clearanceHole, edgePilot } from '../joints/screw-holes.ts';
import { spaceScrews } from '../joints/screw-spacing.ts';
import { axisOf, boxTicks, type Direction, oneAlong, opposite } from '../place.ts';
import type { RoomToMove } from './free-top.ts';

/** Two panels that lie face on face, screwed together through both. */
export interface ConnectingSpec {
  /** The one that heads are in. */
  readonly part: DraftPart;
  readonly mate: DraftPart;
  /** The way from the part to the mate, which is the way the screws are driven. */
  readonly towards: Direction;
  /** What meets either panel from inside its case: no screw stands where one of them does. */
  readonly avoid: readonly DraftPart[];
  /** Strips that edge what is inside: a driver passes before them. */
  readonly edging?: readonly DraftPart[];
  /** True where heads may be in this one only: those in the other would be seen. */
  readonly oneWay?: boolean;
  /** True where others hold as well, so that these may be left out where they find no place. */
  readonly mayFail?: boolean;
  /** How the second panel moves across: the front line of screws holds it fast, those behind go with it in wide holes or slots. */
  readonly room?: (screw: ChosenScrew, behind: Traced) => RoomToMove | undefined;
}

/**
 * Adds the joint and its screws, and tells whether there are any: rows near both long edges, none in the way of another, nor under a shelf's end. Where
 * they find no place from one side, they are driven from the other, unless they may not be.
 */
export function connectingScrews(draft: Draft, bores: Bores, spec: ConnectingSpec): boolean {
  const back = { ...spec, part: spec.mate, mate: spec.part, towards: opposite(spec.towards) };
  const ways = spec.oneWay ? [spec] : [spec, back];
  const screws = ways.map((way) => connectingScrew(draft, way.part.thickness, way.mate.thickness));
  if (screws.every((screw) => screw === undefined)) noScrew(draft, ways);
  // One line of screws holds them where there is no place for a second.
  const tries = [true, false].flatMap((all) => ways.map((way, i) => ({ way, screw: screws[i], all })));
  for (const { way, screw, all } of tries) {
    const places = screw && gridOf(draft, bores, way, screw, all);
    if (!screw || !places) continue;
    const id = `${way.part.id}>${way.mate.id}`;
    const fasteners = places.map((at, n) => drive(draft, way, screw, { id, at, n: n + 1 }));
    draft.joints.push({ fasteners, ...jointOf(draft, way) });
    return true;
  }
  if (spec.mayFail && screws.some((screw) => screw !== undefined)) return false;
  if (screws.some((screw) => screw !== undefined)) noPlace(draft, spec);
  draft.joints.push({ fasteners: [], ...jointOf(draft, spec) });
  return false;
}

function jointOf(draft: Draft, { part, mate, towards }: ConnectingSpec): Omit<Joint, 'fasteners'> {
  const side = sideLooking(part.place, towards) as Face;
  return {
    id: `${part.id}>${mate.id}`,
    kind: 'butt',
    duty: 'connect',
    hold: 'face-screws',
    part: part.id,
    side,
    mate: mate.id,
    mateSide: sideLooking(mate.place, opposite(towards)) as Face,
    contact: contactBox(draft, part, side, mate),
  };
}

/** A place on the faces: along the part's length and across it, in the piece. */
interface Spot {
  readonly along: Traced;
  readonly across: Traced;
  /** The room it has, where the second panel moves. */
  readonly room?: RoomToMove;
}

/** Where the screws come: rows along the panel, one near either long edge where it is wide enough for two. */
function gridOf(
  draft: Draft,
  bores: Bores,
  spec: ConnectingSpec,
  screw: ChosenScrew,
  all: boolean,
): readonly Spot[] | undefined {
  const l = draft.ledger;
  const { part, mate } = spec;
  const along = axisOf(part.place.length).axis;
  const across = axisOf(part.place.width).axis;
  const step = l.row(SETTING_OUT.setStep);
  const [low, high] = overlapAlong(draft, part, mate, along);
  const [near, far] = overlapAlong(draft, part, mate, across);
  const rows = spaceScrews(l, 'connect', l.less('width of what touches', far, near), step);
  const spacing = spaceScrews(l, 'connect', l.less('length of what touches', high, low), step);
  const spots: Spot[] = [];
  for (const from of rows.at) {
    const asked = l.sum('line of the screws', near, from);
    const front = spots[0]?.across;
    const roomAt = (line: Traced) =>
      spec.room && front !== undefined
        ? spec.room(screw, l.less('how far it stands behind the screws in front', line, front))
        : undefined;
    const wanted = roomAt(asked);
    const found = lineOf(draft, bores, { wanted, ...spec }, screw, asked, [near, far], front, {
      spacing,
      low,
      high,
    });
    if (!found && !all && (spots.length > 1 || rows.at.at(-1) !== from)) continue;
    if (!found) return undefined;
    const room = found.line === asked ? wanted : roomAt(found.line);
    for (const place of found.places)
      spots.push({ along: place, across: found.line, ...(room ? { room } : {}) });
  }
  // Lines are further apart than screws may be, so that they need not look for one another.
  for (const { along, across, room } of spots)
    for (const bore of boresOf(draft, { wanted: room, ...spec }, screw, l.ticks(along), l.ticks(across)))
      bores.add(bore);
  return spots;
}

/** Steps that a line of screws may be moved across the panel where it finds no places: the shortest way first. */
const STEPS = [0, ...Array.from({ length: 20 }, (_, i) => [i + 1, -i - 1]).flat()];

/** What is screwed, and the room that the screws of a line have. */
type LineSpec = ConnectingSpec & { readonly wanted: RoomToMove | undefined };

/** A line of screws along the panel, moved across it until all of them find their places. */
function lineOf(
  draft: Draft,
  bores: Bores,
  spec: LineSpec,
  screw: ChosenScrew,
  asked: Traced,
  [near, far]: readonly [Traced, Traced],
  before: Traced | undefined,
  row: Pick<Row, 'spacing' | 'low' | 'high'>,
): { readonly line: Traced; readonly places: readonly Traced[] } | undefined {
  const l = draft.ledger;
  const aside = l.row(SETTING_OUT.moveAside);
  const least = l.ticks(l.row(SETTING_OUT.connectEndLeast));
  const apart = l.ticks(l.row(SETTING_OUT.connectSpacingLeast)) / 2;
  for (const n of STEPS) {
    const at = l.ticks(asked) + n * l.ticks(aside);
    if (n !== 0 && (at < l.ticks(near) + least || at > l.ticks(far) - least)) continue;
    if (before !== undefined && at - l.ticks(before) < apart) continue;
    const isFree = (along: number) => {
      const all = boresOf(draft, spec, screw, along, at);
      return !all.some((b) => bores.meets(b)) && !isBehind(draft, spec, screw, all[0]!);
    };
    const places = clearPlaces(l, { first: 0, isFree, ...row });
    if (!places) continue;
    if (n === 0) return { line: asked, places };
    const by = l.times('steps aside', aside, Math.abs(n));
    const reason = 'line of the screws, moved clear of what is there';
    return { line: n > 0 ? l.sum(reason, asked, by) : l.less(reason, asked, by), places };
  }
  return undefined;
}

/** The way of a screw, and the hole or the ends of the slot that give it room. */
function boresOf(
  draft: Draft,
  spec: LineSpec,
  screw: ChosenScrew,
  at: number,
  line: number,
): readonly [Bore, ...Bore[]] {
  const l = draft.ledger;
  const { part, wanted } = spec;
  const way = boreOf(draft, spec, screw, at, line);
  if (!wanted) return [way];
  const radius = l.ticks(wanted.diameter) / 2;
  const reach = wanted.long === undefined ? 0 : l.ticks(wanted.long) / 2 - radius;
  return [
    way,
    ...(reach > 0 ? [-reach, reach] : [0]).map((off): Bore => {
      const bore = boreOf(draft, spec, screw, at, line + off);
      return { ...bore, parts: [part.id], radius };
    }),
  ];
}

function boreOf(draft: Draft, spec: ConnectingSpec, screw: ChosenScrew, at: number, line: number): Bore {
  const l = draft.ledger;
  const { part, mate, towards } = spec;
  const drives = axisOf(towards);
  const from: [number, number, number] = [0, 0, 0];
  from[axisOf(part.place.length).axis] = at;
  from[axisOf(part.place.width).axis] = line;
  from[drives.axis] = l.ticks(headPlane(spec));
  const to: [number, number, number] = [...from];
  to[drives.axis] += drives.sign * l.ticks(screw.length);
  return { parts: [part.id, mate.id], from, to, radius: l.ticks(screw.diameter) / 2 };
}

/** The face that the heads are in. */
function headPlane({ part, towards }: ConnectingSpec): Traced {
  return planeOf(part, sideLooking(part.place, opposite(towards)));
}

/** True where a driver has no room before a head, or something meets the panels where the screw stands. */
function isBehind(
  draft: Draft,
  { part, avoid, edging, towards, wanted }: LineSpec,
  screw: ChosenScrew,
  bore: Bore,
): boolean {
  const l = draft.ledger;
  const aside = Math.max(l.ticks(screw.head), wanted ? l.ticks(wanted.washerWidth) / 2 : 0);
  if (avoid.some((p) => touches(bore, boxTicks(l, p.box), aside))) return true;
  const out = oneAlong(opposite(towards));
  return !driverRoom(draft, { head: bore.from, out, own: part }, avoid, edging);
}

/** Bores for a screw and drives it. */
function drive(
  draft: Draft,
  spec: ConnectingSpec,
  screw: ChosenScrew,
  { id: joint, at, n }: { readonly id: string; readonly at: Spot; readonly n: number },
): string {
  const l = draft.ledger;
  const { part, mate, towards } = spec;
  const along = axisOf(part.place.length).axis;
  const on = (p: DraftPart, run: 'length' | 'width', reason: string) => {
    const { axis } = axisOf(p.place[run]);
    return inPart(draft, p, axis, axis === along ? at.along : at.across, reason);
  };
  const holds = l.less('how deep the screw stands in the second panel', screw.length, part.thickness);
  const side = sideLooking(part.place, opposite(towards)) as Face;
  const { room } = at;
  const place = [
    on(part, 'length', 'hole along the panel'),
    on(part, 'width', 'hole across the panel'),
  ] as const;
  part.features.push(
    room?.long === undefined
      ? {
          kind: 'hole',
          use: 'clearance',
          id: `${part.id}#${mate.id}:${n}`,
          purpose: `screw into the ${mate.name}`,
          side,
          at: place,
          ...(room
            ? { diameter: room.diameter }
            : { diameter: clearanceHole(draft, screw), countersink: screw.head }),
        }
      : {
          kind: 'slot',
          use: 'screw',
          id: `${part.id}#${mate.id}:${n}`,
          purpose: `for screws that go with the ${mate.name}`,
          face: side,
          run: 'width',
          at: place,
          length: room.long,
          width: room.diameter,
        },
  );
  mate.features.push({
    kind: 'hole',
    use: 'pilot',
    id: `${mate.id}#${part.id}:${n}`,
    purpose: `screw from the ${part.name}`,
    side: sideLooking(mate.place, opposite(towards)),
    at: [on(mate, 'length', 'pilot along the panel'), on(mate, 'width', 'pilot across the panel')],
    diameter: edgePilot(draft, screw, draft.lot(mate.lot)),
    depth: holds,
  });
  const head: Traced[] = [];
  head[along] = at.along;
  head[axisOf(part.place.width).axis] = at.across;
  head[axisOf(towards).axis] = headPlane(spec);
  const id = `${joint}:${n}`;
  draft.fasteners.push({
    id,
    joint,
    screw: screw.screw.id,
    through: [part.id, mate.id],
    head: head as never,
    direction: towards,
    length: screw.length,
    diameter: screw.diameter,
    ...(room ? { washer: room.washer } : {}),
    holds,
    spare: l.less('wood left beyond the screw', mate.thickness, holds),
  });
  return id;
}

/** No screw fits in any of the ways: tells what lengths would, by the first way that has room for one. */
function noScrew(draft: Draft, ways: readonly ConnectingSpec[]): void {
  const l = draft.ledger;
  const mm = (t: Traced) => toMm(l.ticks(t));
  const [hold, farFace] = [mm(l.row(SETTING_OUT.leastHold)), mm(l.row(SETTING_OUT.farFace))];
  const { part, mate } = ways.find((w) => mm(w.mate.thickness) >= hold + farFace) ?? ways[0]!;
  const room = mm(mate.thickness) >= hold + farFace;
  const shortest = Math.ceil((mm(part.thickness) + hold) * 10) / 10;
  const longest = Math.floor((mm(part.thickness) + mm(mate.thickness) - farFace) * 10) / 10;
  draft.snags.push({
    code: 'screws.none-to-connect',
    level: 'stop',
    where: { path: `design/records/${mate.record}`, part: mate.id, record: mate.record },
    sentence: room
      ? `No countersunk screw on the shop’s list is ${shortest} to ${longest} mm long: long enough to hold the ${part.name} to the ${mate.name}, and short enough not to come through.`
      : `The ${mate.name} is ${mm(mate.thickness)} mm thick, too thin for a screw from the ${part.name} to hold in it without coming through.`,
    rule: {
      says: `a screw through two panels stands at least ${hold} mm in the second, and ends ${farFace} mm before its far face`,
      source: 'common practice',
      confirmed: false,
    },
    cures: [
      {
        says: room
          ? `Put a countersunk screw ${shortest} to ${longest} mm long on the shop’s list.`
          : `Use boards of at least ${Math.ceil((hold + farFace) * 10) / 10} mm there.`,
      },
    ],
  });
}

function noPlace(draft: Draft, { part, mate }: ConnectingSpec): void {
  draft.snags.push({
    code: 'screws.no-place-to-connect',
    level: 'stop',
    where: { path: `design/records/${mate.record}`, part: mate.id, record: mate.record },
    sentence: `Nothing is left between shelves and other screws for those that hold the ${part.name} to the ${mate.name}.`,
    cures: [{ says: 'Move a shelf, or make one of the two cases larger.' }],
  });
}
