import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bore, Bores } from './bores.ts';
import { alongEdge, contactBox, inPart, outward, planeOf, sideLooking } from './contact.ts';
import type { Draft, DraftPart, Triple } from './draft.ts';
import type { Edge, Face } from './feature.ts';
import type { Duty, Joint } from './joint.ts';
import { axisOf, opposite } from './place.ts';
import { type ChosenScrew, pocketScrew } from './screw-choice.ts';
import { spaceScrews } from './screw-spacing.ts';

/** A butt joint held by pocket screws: the edge of one part on the face of another. */
export interface PocketJointSpec {
  readonly part: DraftPart;
  readonly edge: Edge;
  /** The face the pockets are bored into. */
  readonly face: Face;
  readonly mate: DraftPart;
  readonly duty: Duty;
}

/** Radius of a pocket's bore: 9.5 mm across (common practice). */
const POCKET_RADIUS = 4.75 * 3200;
/** How far a pocket's bore reaches back from the screw's head before it is out of the face. */
const POCKET_RUN = 40 * 3200;

/** Adds the joint, its pockets and its screws. */
export function pocketJoint(draft: Draft, bores: Bores, spec: PocketJointSpec): void {
  const l = draft.ledger;
  const { part, edge, face, mate, duty } = spec;
  const direction = outward(part.place, edge);
  const across = axisOf(direction);
  const along = alongEdge(part, edge, face);
  const faceOut = axisOf(outward(part.place, face));
  const contact = contactBox(draft, part, edge, mate);
  const id = `${part.id}>${mate.id}`;
  const mateThickness = l.less(
    'thickness that the screw may stand in',
    mate.box.max[across.axis],
    mate.box.min[across.axis],
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
  const chosen = pocketScrew(draft, part.thickness, mateThickness);
  const length = l.less('length of the joint', contact.max[along], contact.min[along]);
  if (!chosen || l.ticks(length) <= 0) {
    noScrew(draft, spec);
    draft.joints.push({ ...joint, fasteners: [] });
    return;
  }
  const middle = l.sum(
    'middle of the thickness',
    part.box.min[faceOut.axis],
    l.ratio('half the thickness', part.thickness, SETTING_OUT.half),
  );
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
  const headAt = (place: Traced): Triple => {
    const head: Traced[] = [];
    head[along] = place;
    head[across.axis] =
      across.sign > 0 ? l.less('head of the screw', plane, back) : l.sum('head of the screw', plane, back);
    head[faceOut.axis] =
      faceOut.sign > 0
        ? l.sum('head of the screw', middle, drift)
        : l.less('head of the screw', middle, drift);
    return head as unknown as Triple;
  };
  const row = clearRow(draft, bores, spec, chosen, headAt, length, contact.min[along]);
  const fasteners = row.map((place, i) => {
    const head = headAt(place);
    boresOf(draft, spec, chosen, head).forEach((b) => {
      bores.add(b);
    });
    part.features.push({
      kind: 'pocket',
      id: `${part.id}#${mate.id}:${i + 1}`,
      purpose: `screw into the ${mate.name}`,
      face,
      edge,
      along: inPart(draft, part, along, place, 'place of the pocket along the edge'),
    });
    const fastener = `${id}:${i + 1}`;
    draft.fasteners.push({
      id: fastener,
      joint: id,
      screw: chosen.screw.id,
      through: [part.id, mate.id],
      head,
      direction,
      lean: { degrees: 15, toward: opposite(outward(part.place, face)) },
      length: chosen.length,
      diameter: chosen.diameter,
      holds,
      spare,
    });
    return fastener;
  });
  draft.joints.push({ ...joint, fasteners });
}

/**
 * The row of screws, moved along the joint as a whole, in steps, until none of them meets another. The row at the
 * end of a lying part begins one step on, so that equal shelves on both sides of an upright never meet.
 */
function clearRow(
  draft: Draft,
  bores: Bores,
  spec: PocketJointSpec,
  chosen: ChosenScrew,
  headAt: (place: Traced) => Triple,
  length: Traced,
  low: Traced,
): readonly Traced[] {
  const l = draft.ledger;
  const { at, endLeast } = spaceScrews(l, spec.duty, length, l.row(SETTING_OUT.setStep));
  const straight = at.map((from) => l.sum('place of the screw', low, from));
  const step = l.row(SETTING_OUT.moveAside);
  const lies = axisOf(spec.part.place.length).axis === 0;
  const first = lies && spec.edge === 'end' && at.length > 1 ? 1 : 0;
  const moved = (n: number) =>
    n === 0
      ? straight
      : straight.map((place) => {
          const aside = l.times('steps aside', step, Math.abs(n));
          return n > 0
            ? l.sum('place of the screw, moved clear of others', place, aside)
            : l.less('place of the screw, moved clear of others', place, aside);
        });
  const fits = (row: readonly Traced[]) =>
    row.every((place) => {
      const fromLow = l.ticks(place) - l.ticks(low);
      return fromLow >= l.ticks(endLeast) && l.ticks(length) - fromLow >= l.ticks(endLeast);
    });
  for (const n of [0, 1, -1, 2, -2, 3, -3, 4, -4].map((k) => first + k)) {
    const row = moved(n);
    if (n !== 0 && !fits(row)) continue;
    if (!row.some((place) => boresOf(draft, spec, chosen, headAt(place)).some((b) => bores.meets(b))))
      return row;
  }
  draft.snags.push({
    code: 'screws.meet',
    level: 'stop',
    where: { part: spec.part.id, record: spec.part.record },
    sentence: `Screws from the ${spec.part.name} into the ${spec.mate.name} would meet others there.`,
    rule: { says: 'screws keep 2 mm of wood between them', source: 'common practice', confirmed: false },
    cures: [{ says: 'Move one of the parts up or down by its own thickness.' }],
  });
  return straight;
}

/** The screw and the pocket it goes in by, as bores. */
function boresOf(draft: Draft, spec: PocketJointSpec, chosen: ChosenScrew, head: Triple): readonly Bore[] {
  const l = draft.ledger;
  const across = axisOf(outward(spec.part.place, spec.edge));
  const faceOut = axisOf(outward(spec.part.place, spec.face));
  const from = head.map((t) => l.ticks(t)) as unknown as Bore['from'];
  const run = (distance: number): Bore['from'] => {
    const to = [...from] as [number, number, number];
    to[across.axis] += (across.sign * distance * SETTING_OUT.pocketLean.of[0]) / SETTING_OUT.pocketLean.of[1];
    to[faceOut.axis] -=
      (faceOut.sign * distance * SETTING_OUT.pocketDrift.of[0]) / SETTING_OUT.pocketDrift.of[1];
    return to;
  };
  return [
    {
      parts: [spec.part.id, spec.mate.id],
      from,
      to: run(l.ticks(chosen.length)),
      radius: l.ticks(chosen.diameter) / 2,
    },
    { parts: [spec.part.id], from, to: run(-POCKET_RUN), radius: POCKET_RADIUS },
  ];
}

function noScrew(draft: Draft, spec: PocketJointSpec): void {
  const code = 'screws.none-fits';
  if (draft.snags.some((s) => s.code === code && s.where.record === spec.part.record)) return;
  draft.snags.push({
    code,
    level: 'stop',
    where: { part: spec.part.id, record: spec.part.record },
    sentence: `No pocket screw on the shop’s list fits from the ${spec.part.name} into the ${spec.mate.name} without coming through or holding too little.`,
    rule: { says: SETTING_OUT.farFace.says, source: SETTING_OUT.farFace.source, confirmed: false },
    cures: [
      { says: 'Put a pocket screw of a fitting length on the shop’s list (32 mm for boards of 18 mm).' },
    ],
  });
}
