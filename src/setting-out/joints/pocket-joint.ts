import { pocketShape, SETTING_OUT } from '../../materials/index.ts';
import { fromMm, type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import { axisOf, type Direction, opposite } from '../place.ts';
import type { Bore, Bores } from './bores.ts';
import { alongEdge, contactBox, inPart, outward, planeOf, sideLooking } from './contact.ts';
import { driverRoom } from './driver-room.ts';
import type { Duty, Joint } from './joint.ts';
import { clearPlaces, screwsMeet } from './move-aside.ts';
import { type ChosenScrew, pocketScrew } from './screw-choice.ts';
import { fromEnds } from './screw-distance.ts';
import { spaceScrews } from './screw-spacing.ts';
import { woodBehind } from './wood-behind.ts';

/** A butt joint held by pocket screws: the edge of one part on the face of another. */
export interface PocketJointSpec {
  readonly part: DraftPart;
  readonly edge: Edge;
  /** The face the pockets are bored into. */
  readonly face: Face;
  readonly mate: DraftPart;
  readonly duty: Duty;
  /** Parts that stand already when the screws are driven. */
  readonly standing: readonly DraftPart[];
  /** Set where something else holds the part, or may do: this joint is left out where its screws find no place. */
  readonly besides?: true | (() => boolean);
  /** Only the foremost screw of the row: behind it the mate moves. */
  readonly foremost?: true;
}

/** Adds the joint, its pockets and its screws. */
export function pocketJoint(draft: Draft, bores: Bores, spec: PocketJointSpec): void {
  const l = draft.ledger;
  const { part, edge, face, mate, duty, standing } = spec;
  const direction = outward(part.place, edge);
  const across = axisOf(direction);
  const along = alongEdge(part, edge, face);
  const faceOut = axisOf(outward(part.place, face));
  const contact = contactBox(draft, part, edge, mate);
  const id = `${part.id}>${mate.id}`;
  const mateThickness = woodBehind(
    draft,
    mate,
    l.less('thickness that the screw may stand in', mate.box.max[across.axis], mate.box.min[across.axis]),
    direction,
    contact,
  );
  const joint: Omit<Joint, 'fasteners'> = {
    id,
    kind: 'butt',
    duty,
    hold: 'pocket-screws',
    part: part.id,
    side: edge,
    mate: mate.id,
    mateSide: sideLooking(mate.place, opposite(direction)),
    contact,
  };
  const middle = l.sum(
    'middle of the thickness',
    part.box.min[faceOut.axis],
    l.ratio('half the thickness', part.thickness, SETTING_OUT.half),
  );
  // It leans away from its pocket: an end that is edged there ends before the strip.
  const beside =
    faceOut.sign > 0
      ? l.ticks(middle) - l.ticks(mate.box.min[faceOut.axis])
      : l.ticks(mate.box.max[faceOut.axis]) - l.ticks(middle);
  const chosen = pocketScrew(draft, part.thickness, mateThickness, beside);
  const length = l.less('length of the joint', contact.max[along], contact.min[along]);
  if (!chosen || l.ticks(length) <= 0) {
    noScrew(draft, spec);
    draft.joints.push({ fasteners: [], ...joint });
    return;
  }
  if (!hasRoom(draft, spec)) noRoom(draft, spec);
  const seat = l.ratio('from the joint back to the screw’s head', part.thickness, SETTING_OUT.pocketSeat);
  const back = l.ratio('the same, square to the joint', seat, SETTING_OUT.pocketLean);
  const drift = l.ratio('the same, across the thickness', seat, SETTING_OUT.pocketDrift);
  const holds = l.ratio(
    'how deep the screw stands in the second part',
    l.less('screw beyond the joint', chosen.length, seat),
    SETTING_OUT.pocketLean,
  );
  const spare = l.less('wood left before the far face', mateThickness, holds);
  const plane = planeOf(part, edge);
  const headAcross =
    across.sign > 0 ? l.less('head of the screw', plane, back) : l.sum('head of the screw', plane, back);
  const headOut =
    faceOut.sign > 0 ? l.sum('head of the screw', middle, drift) : l.less('head of the screw', middle, drift);
  const [tickAcross, tickOut] = [l.ticks(headAcross), l.ticks(headOut)];
  const headTicks = (place: number): Bore['from'] => {
    const head: [number, number, number] = [0, 0, 0];
    head[along] = place;
    head[across.axis] = tickAcross;
    head[faceOut.axis] = tickOut;
    return head;
  };
  const { screwFrom, pocketFrom } = boresOf(draft, spec, chosen);
  const least = fromEnds(draft, mate, along, chosen.diameter);
  const whole = spaceScrews(l, duty, length, l.row(SETTING_OUT.setStep), least);
  const spacing = spec.foremost ? { ...whole, at: whole.at.slice(0, 1) } : whole;
  // At the end of a lying part the row begins one step on, so that equal shelves on both sides of an upright never
  // meet.
  const lies = axisOf(part.place.length).axis === 0;
  const clear = (isFree: (at: number) => boolean) =>
    clearPlaces(l, {
      spacing,
      low: contact.min[along],
      high: contact.max[along],
      first: lies && edge === 'end' && spacing.at.length > 1 ? 1 : 0,
      isFree,
    });
  const isFree = (head: Bore['from']) => !bores.meets(screwFrom(head)) && !bores.meets(pocketFrom(head));
  const out = wayOut(spec);
  const row = clear((at) => {
    const head = headTicks(at);
    return isFree(head) && driverRoom(draft, { head, out, own: part }, standing);
  });
  if (!row && (spec.besides === true || spec.besides?.())) return;
  if (!row) {
    if (clear((at) => isFree(headTicks(at)))) noDriver(draft, spec);
    else screwsMeet(draft, part, mate);
  }
  // What the screws of a joint have in common, they share: there are hundreds of them in a kitchen.
  const purpose = `screw into the ${mate.name}`;
  const through = [part.id, mate.id];
  const lean = { degrees: 15, toward: opposite(outward(part.place, face)) };
  const [pocketId, screwId] = [`${part.id}#${mate.id}:`, `${id}:`];
  const fasteners = (row ?? []).map((place, i) => {
    const head: [Traced, Traced, Traced] = [place, place, place];
    head[across.axis] = headAcross;
    head[faceOut.axis] = headOut;
    const from = headTicks(l.ticks(place));
    bores.add(screwFrom(from));
    bores.add(pocketFrom(from));
    part.features.push({
      kind: 'pocket',
      id: `${pocketId}${i + 1}`,
      purpose,
      face,
      edge,
      along: inPart(draft, part, along, place, 'place of the pocket along the edge'),
    });
    const fastener = `${screwId}${i + 1}`;
    draft.fasteners.push({
      id: fastener,
      joint: id,
      screw: chosen.screw.id,
      through,
      head,
      direction,
      lean,
      length: chosen.length,
      diameter: chosen.diameter,
      holds,
      spare,
    });
    return fastener;
  });
  draft.joints.push({ fasteners, ...joint });
}

/** The screw and the pocket it goes in by, as bores from where its head is. */
function boresOf(
  draft: Draft,
  { part, mate, edge, face }: PocketJointSpec,
  chosen: ChosenScrew,
): { readonly screwFrom: (head: Bore['from']) => Bore; readonly pocketFrom: (head: Bore['from']) => Bore } {
  const l = draft.ledger;
  const across = axisOf(outward(part.place, edge));
  const faceOut = axisOf(outward(part.place, face));
  const shape = pocketShape(toMm(l.ticks(part.thickness)));
  const [[cosine, of], [sine]] = [SETTING_OUT.pocketLean.of, SETTING_OUT.pocketDrift.of];
  const bore = (parts: readonly string[], run: number, radius: number) => {
    const off: [number, number, number] = [0, 0, 0];
    off[across.axis] += (across.sign * run * cosine) / of;
    off[faceOut.axis] -= (faceOut.sign * run * sine) / of;
    return (from: Bore['from']): Bore => {
      const to = [from[0] + off[0], from[1] + off[1], from[2] + off[2]] as const;
      return { parts, from, to, radius };
    };
  };
  return {
    screwFrom: bore([part.id, mate.id], l.ticks(chosen.length), l.ticks(chosen.diameter) / 2),
    pocketFrom: bore([part.id], fromMm(shape.seat - shape.out), fromMm(shape.boreRadius)),
  };
}

/** The way from the head of a pocket screw out to the hand. */
function wayOut({ part, edge, face }: PocketJointSpec): Bore['from'] {
  return WAYS_OUT[outward(part.place, edge)][outward(part.place, face)];
}

/** The ways out by where the edge looks, and then by where the face looks. */
const WAYS_OUT = byDirection((edge) =>
  byDirection((face): Bore['from'] => {
    const [[cosine, of], [sine]] = [SETTING_OUT.pocketLean.of, SETTING_OUT.pocketDrift.of];
    const [across, faceOut] = [axisOf(edge), axisOf(face)];
    const out: [number, number, number] = [0, 0, 0];
    out[across.axis] = (-across.sign * cosine) / of;
    out[faceOut.axis] = (faceOut.sign * sine) / of;
    return out;
  }),
);

function byDirection<T>(of: (d: Direction) => T): Readonly<Record<Direction, T>> {
  return { '+x': of('+x'), '-x': of('-x'), '+y': of('+y'), '-y': of('-y'), '+z': of('+z'), '-z': of('-z') };
}

/** True when a driver gets behind the screws of a joint somewhere along it, past what stands there already. */
export function isWithinReach(draft: Draft, spec: PocketJointSpec): boolean {
  const l = draft.ledger;
  const { part, edge, face, mate, standing } = spec;
  const across = axisOf(outward(part.place, edge));
  const faceOut = axisOf(outward(part.place, face));
  const along = alongEdge(part, edge, face);
  const contact = contactBox(draft, part, edge, mate);
  const out = wayOut(spec);
  const thick: number = l.ticks(part.thickness);
  const plane: number = l.ticks(planeOf(part, edge));
  const head: [number, number, number] = [0, 0, 0];
  head[across.axis] =
    plane - (across.sign * thick * SETTING_OUT.pocketLean.of[0]) / SETTING_OUT.pocketLean.of[1];
  head[faceOut.axis] =
    (l.ticks(part.box.min[faceOut.axis]) + l.ticks(part.box.max[faceOut.axis])) / 2 +
    (faceOut.sign * thick * SETTING_OUT.pocketDrift.of[0]) / SETTING_OUT.pocketDrift.of[1];
  const [low, high] = [l.ticks(contact.min[along]), l.ticks(contact.max[along])];
  const aside = Math.min(ASIDE, (high - low) / 2);
  for (let at = low + aside; at <= high - aside; at += LOOK_EVERY) {
    head[along] = at;
    if (driverRoom(draft, { head, out, own: part }, standing)) return true;
  }
  return false;
}

/** No screw is nearer to the ends of a joint (common practice); and how far apart places along it are looked at, in ticks (our own choice). */
const ASIDE = fromMm(25);
const LOOK_EVERY = fromMm(10);

function noDriver(draft: Draft, { part, mate }: PocketJointSpec): void {
  const code = 'pockets.no-driver';
  if (draft.snags.some((s) => s.code === code && s.where.record === part.record)) return;
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `No driver gets behind the pocket screws from the ${part.name} into the ${mate.name}: other panels stand too near.`,
    rule: {
      says: 'an angled head on a bit of 100 mm needs about 180 mm from a joint, along the board',
      source: 'from memory of usual tools',
      confirmed: false,
    },
    cures: [{ says: 'Leave 180 mm clear before the pockets, or join that case in another way.' }],
  });
}

function noScrew(draft: Draft, spec: PocketJointSpec): void {
  const code = 'screws.none-fits';
  if (draft.snags.some((s) => s.code === code && s.where.record === spec.part.record)) return;
  // That strips take the wood of a corner is told already.
  if (draft.snags.some((s) => s.code === 'edging.end-too-thick')) return;
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${spec.part.record}`, part: spec.part.id, record: spec.part.record },
    sentence: `No pocket screw on the shop’s list fits from the ${spec.part.name} into the ${spec.mate.name} without coming through or holding too little.`,
    rule: { says: SETTING_OUT.farFace.says, source: SETTING_OUT.farFace.source, confirmed: false },
    cures: [
      { says: 'Put a pocket screw of a fitting length on the shop’s list (32 mm for boards of 18 mm).' },
    ],
  });
}

/** True when the mouth of a pocket ends on the part, with wood behind it. */
export function hasRoom(draft: Draft, { part, edge }: Pick<PocketJointSpec, 'part' | 'edge'>): boolean {
  const l = draft.ledger;
  const run =
    axisOf(outward(part.place, edge)).axis === axisOf(part.place.length).axis ? part.length : part.width;
  return toMm(l.ticks(run)) > pocketShape(toMm(l.ticks(part.thickness))).mouth;
}

function noRoom(draft: Draft, { part, mate }: PocketJointSpec): void {
  const code = 'pockets.no-room';
  if (draft.snags.some((s) => s.code === code && s.where.record === part.record)) return;
  const { mouth } = pocketShape(toMm(draft.ledger.ticks(part.thickness)));
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `Pockets for the screws into the ${mate.name} would run right across the ${part.name}.`,
    rule: {
      says: 'a pocket leans 15 degrees and is bored 9.5 mm wide',
      source: 'common practice',
      confirmed: false,
    },
    cures: [{ says: `Make it at least ${Math.ceil(mouth) + 1} mm there, or of thinner board.` }],
  });
}

/**
 * True when the screws of a joint stand in the mate's wood on both sides, from where they enter to their tips, and
 * don't come out in a groove behind. (No screw at all is told elsewhere.)
 */
export function findsWood(draft: Draft, spec: PocketJointSpec): boolean {
  const l = draft.ledger;
  const { part, mate } = spec;
  const faceOut = axisOf(outward(part.place, spec.face));
  const across = axisOf(outward(part.place, spec.edge)).axis;
  const mateThickness = l.less('thickness', mate.box.max[across], mate.box.min[across]);
  const chosen = pocketScrew(draft, part.thickness, mateThickness);
  if (!chosen) return true;
  // Behind a groove there may be too little left for any screw.
  const contact = contactBox(draft, part, spec.edge, mate);
  const left = woodBehind(draft, mate, mateThickness, outward(part.place, spec.edge), contact);
  if (!pocketScrew(draft, part.thickness, left)) return false;
  const enters = (l.ticks(part.box.min[faceOut.axis]) + l.ticks(part.box.max[faceOut.axis])) / 2;
  const [sine, of] = SETTING_OUT.pocketDrift.of;
  const drift = ((l.ticks(chosen.length) - l.ticks(part.thickness)) * sine) / of;
  const wall = l.ticks(chosen.diameter) / 2 + l.ticks(l.row(SETTING_OUT.wallBeside));
  return [enters, enters - faceOut.sign * drift].every(
    (at) =>
      at - wall >= l.ticks(mate.box.min[faceOut.axis]) && at + wall <= l.ticks(mate.box.max[faceOut.axis]),
  );
}
