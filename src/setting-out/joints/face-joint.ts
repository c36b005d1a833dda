import { FACE_SCREWS } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import { axisOf, oneAlong, opposite } from '../place.ts';
import type { Bores } from './bores.ts';
import { contactBox, outward, planeOf, sideLooking } from './contact.ts';
import { driverRoom } from './driver-room.ts';
import { beforeHeads, type HeadRow, headRow, headsOf } from './heads.ts';
import type { Duty, Heads, Joint } from './joint.ts';
import { type ChosenPlug, type PlugWish, plugsFor } from './plug-choice.ts';
import { type ChosenScrew, edgeScrew } from './screw-choice.ts';
import { throughScrews, woodUnder } from './through-screws.ts';

/** An edge of one part that stands on a face of another, and is screwed through it from behind. */
export interface FaceJointSpec {
  readonly part: DraftPart;
  readonly edge: Edge;
  /** The part that the screws go through first. */
  readonly mate: DraftPart;
  readonly duty: Duty;
  /** True for what is glued as well, where the shop has glue. */
  readonly glued: boolean;
  /** True where heads that would be seen are to be plugged, and whether that was asked for. */
  readonly plugs: PlugWish;
  /** Parts that stand already when the screws are driven. */
  readonly standing: readonly DraftPart[];
  /** Set where other joints hold the part already: this one is left out where its screws find no place. */
  readonly besides?: true;
  /** Only the foremost screw of the row: behind it the mate moves. */
  readonly foremost?: true;
  /** A thin panel between them that the screws pass: the back before the edge. */
  readonly over?: DraftPart;
  /** Set where it is made while the mate lies loose. */
  readonly loose?: true;
}

/** The face of the mate that heads are on: the one that looks away from the edge. */
function headFace({ part, edge, mate }: FaceJointSpec): Face {
  return sideLooking(mate.place, outward(part.place, edge)) as Face;
}

function rowFor(draft: Draft, spec: FaceJointSpec, wide: Traced): HeadRow {
  const radius = Math.ceil(draft.ledger.ticks(wide) / 2);
  return headRow(draft, spec.mate, headFace(spec), spec.part, radius);
}

function screwFor(
  draft: Draft,
  { part, edge, mate, over }: FaceJointSpec,
  plug?: ChosenPlug,
): ChosenScrew | undefined {
  const { axis } = axisOf(outward(part.place, edge));
  const depth = draft.ledger.less('depth of the edge', part.box.max[axis], part.box.min[axis]);
  return edgeScrew(draft, {
    under: woodUnder(draft, { part: mate, plug, over }),
    edge: part.thickness,
    depth,
    ...(plug ? { mostHead: plug.diameter } : {}),
  });
}

/** A screw, the plug over it if there is one, and what will be seen of it. */
interface Chosen {
  readonly screw: ChosenScrew;
  readonly plug?: ChosenPlug;
  readonly row: HeadRow;
  readonly heads: Heads;
}

function choose(draft: Draft, spec: FaceJointSpec): Chosen | undefined {
  const screw = screwFor(draft, spec);
  const row = rowFor(draft, spec, screw?.head ?? draft.ledger.row(FACE_SCREWS.usualHead));
  const heads = headsOf(draft, row);
  if (heads.sight === 'seen' && spec.plugs.wanted) {
    for (const plug of plugsFor(draft, spec.mate)) {
      const under = screwFor(draft, spec, plug);
      if (under)
        return {
          screw: under,
          plug,
          row: rowFor(draft, spec, plug.diameter),
          heads: { ...heads, finish: 'plugged' },
        };
    }
    if (spec.plugs.asked) noPlug(draft, spec);
  }
  return screw && { screw, row, heads };
}

/** True when something that stands there already keeps a driver from the whole row. */
export function isShutOff(draft: Draft, spec: FaceJointSpec): boolean {
  const screw = screwFor(draft, spec);
  const row = screw && rowFor(draft, spec, screw.head);
  return row !== undefined && beforeHeads(draft, row, spec.standing).length > 0;
}

/** True when the shop's list has a screw for the joint. */
export function findsScrew(draft: Draft, spec: FaceJointSpec): boolean {
  return screwFor(draft, spec) !== undefined;
}

/** True when the middle of the edge lies on the mate, with wood beside it. */
export function facesWood(
  draft: Draft,
  { part, edge, mate }: Pick<FaceJointSpec, 'part' | 'edge' | 'mate'>,
): boolean {
  const l = draft.ledger;
  const { axis } = axisOf(part.place.thickness);
  const touches =
    l.ticks(planeOf(part, edge)) ===
    l.ticks(planeOf(mate, sideLooking(mate.place, opposite(outward(part.place, edge)))));
  return (
    touches &&
    l.ticks(part.box.min[axis]) >= l.ticks(mate.box.min[axis]) &&
    l.ticks(part.box.max[axis]) <= l.ticks(mate.box.max[axis])
  );
}

/** Adds the joint, its holes and its screws; false where it was left out. */
export function faceJoint(draft: Draft, bores: Bores, spec: FaceJointSpec): boolean {
  const l = draft.ledger;
  const { part, edge, mate, duty } = spec;
  const id = `${mate.id}>${part.id}`;
  const side = sideLooking(mate.place, opposite(outward(part.place, edge))) as Face;
  const hasGlue = draft.job.shop.rack.adhesives.length > 0;
  const joint: Omit<Joint, 'fasteners'> = {
    id,
    kind: 'butt',
    duty,
    hold: spec.glued && hasGlue ? 'glue-and-screws' : 'face-screws',
    part: mate.id,
    side,
    mate: part.id,
    mateSide: edge,
    contact: contactBox(draft, mate, side, part),
    ...(spec.over ? { over: spec.over.id } : {}),
    ...(spec.loose ? { loose: true } : {}),
  };
  const chosen = choose(draft, spec);
  if (!chosen) {
    noScrew(draft, spec);
    draft.joints.push({ fasteners: [], ...joint });
    return true;
  }
  const { screw, plug, row, heads } = chosen;
  const over = beforeHeads(draft, row, spec.standing);
  const across = axisOf(part.place.thickness).axis;
  const drive = axisOf(outward(part.place, edge));
  const along = ([0, 1, 2] as const).find((k) => k !== across && k !== drive.axis)!;
  const out = oneAlong(outward(part.place, edge));
  const fasteners = throughScrews(draft, bores, {
    joint: id,
    part: mate,
    side,
    mate: part,
    mateSide: edge,
    duty,
    screw,
    plug,
    over: spec.over,
    besides: spec.besides === true,
    ...(spec.foremost ? { foremost: true as const } : {}),
    isOpen: (at, head) =>
      over.every(
        (p) => at + row.driver <= l.ticks(p.box.min[along]) || at - row.driver >= l.ticks(p.box.max[along]),
      ) && driverRoom(draft, { head, out, own: mate }, spec.standing),
  });
  if (fasteners.length === 0 && spec.besides) return false;
  draft.joints.push({ heads, fasteners, ...joint });
  return true;
}

function noScrew(draft: Draft, { part, mate, over }: FaceJointSpec): void {
  const code = 'screws.none-for-face';
  if (draft.snags.some((s) => s.code === code && s.where.record === part.record)) return;
  const third = Math.floor((toMm(draft.ledger.ticks(part.thickness)) / 3) * 10) / 10;
  const long = Math.ceil(toMm(draft.ledger.ticks(woodUnder(draft, { part: mate, over }))) * 3);
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `No countersunk screw on the shop’s list fits through the ${mate.name} into the edge of the ${part.name}.`,
    rule: {
      says: 'a screw into a panel’s edge is at most a third of the edge thick, with about two thirds of its length in it',
      source: 'common practice',
      confirmed: false,
    },
    cures: [
      { says: `Put a countersunk screw of at most ${third} mm, about ${long} mm long, on the shop’s list.` },
    ],
  });
}

function noPlug(draft: Draft, { part, mate }: FaceJointSpec): void {
  const code = 'plugs.none-suits';
  if (draft.snags.some((s) => s.code === code && s.where.record === mate.record)) return;
  draft.snags.push({
    code,
    level: 'stop',
    where: { path: `design/records/${mate.record}`, part: mate.id, record: mate.record },
    sentence: `No plug of the rack covers the screws through the ${mate.name} into the ${part.name}: none is as wide as a head that fits, or the board is too thin.`,
    rule: { says: FACE_SCREWS.plugLeast.says, source: FACE_SCREWS.plugLeast.source, confirmed: false },
    cures: [
      { says: 'Put plugs of 10 mm among the rack’s fixings, or plane the board less thin.' },
      { says: 'Let the heads be seen: “heads” of the case is “countersunk”.' },
    ],
  });
}
