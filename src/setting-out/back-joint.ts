import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bore, Bores } from './bores.ts';
import { contactBox, inPart, overlapAlong, planeOf, sideLooking } from './contact.ts';
import type { Draft, DraftPart } from './draft.ts';
import type { Edge } from './feature.ts';
import { clearPlaces, screwsMeet } from './move-aside.ts';
import { type Axis, axisOf } from './place.ts';
import { edgeScrew } from './screw-choice.ts';
import { spaceScrews } from './screw-spacing.ts';

/**
 * Screws the back to the back edge of a panel: clearance hole and countersink in the back, pilot in the edge, in
 * the middle of the edge's thickness.
 */
export function backJoint(draft: Draft, bores: Bores, back: DraftPart, mate: DraftPart): void {
  const l = draft.ledger;
  const along: Axis = axisOf(mate.place.length).axis;
  const across: Axis = along === 0 ? 2 : 0;
  const id = `${back.id}>${mate.id}`;
  const mateSide = sideLooking(mate.place, '+y');
  const touch = contactBox(draft, back, 'show', mate);
  const joint = {
    id,
    kind: 'butt' as const,
    duty: 'back' as const,
    hold: 'face-screws' as const,
    part: back.id,
    side: 'show' as const,
    mate: mate.id,
    mateSide,
    contact: touch,
  };
  const [low, high] = overlapAlong(draft, back, mate, along);
  const length = l.less('length of the joint', high, low);
  const chosen = edgeScrew(draft, back.thickness, mate.thickness);
  if (!chosen || l.ticks(length) <= 0) {
    draft.snags.push({
      code: 'screws.none-for-edge',
      level: 'stop',
      where: { path: `design/records/${back.record}`, part: back.id, record: back.record },
      sentence: `No screw on the shop’s list fits from the back into the edge of the ${mate.name}.`,
      rule: {
        says: 'a screw into a panel’s edge is at most a third of the edge thick, and centred within 1 mm',
        source: 'common practice',
        confirmed: false,
      },
      cures: [{ says: 'Put a countersunk screw of about 3 x 20 mm on the shop’s list.' }],
    });
    draft.joints.push({ ...joint, fasteners: [] });
    return;
  }
  const half = l.ratio('middle of the edge', mate.thickness, SETTING_OUT.half);
  const line = l.sum('middle of the edge', mate.box.min[across], half);
  const root = l.ratio('root of the screw', chosen.diameter, SETTING_OUT.rootShare);
  const pilot = l.round(
    'to the nearest bit',
    l.ratio('pilot hole for the screw', root, SETTING_OUT.pilotShare),
    l.row(SETTING_OUT.bitStep),
    'nearest',
  );
  const clearance = l.sum('clearance hole for the screw', chosen.diameter, l.row(SETTING_OUT.clearanceExtra));
  const holds = l.less('how deep the screw stands in the edge', chosen.length, back.thickness);
  const outer = planeOf(back, 'under');
  const spare = l.less('wood left beyond the screw', outer, mate.box.min[1], chosen.length);
  const spacing = spaceScrews(l, 'back', length, l.row(SETTING_OUT.setStep));
  const headAt = <T>(place: T, of: (t: Traced) => T): readonly [T, T, T] => {
    const head: T[] = [];
    head[1] = of(outer);
    head[along] = place;
    head[across] = of(line);
    return head as never;
  };
  const boreAt = (place: number): Bore => {
    const from = headAt(place, (t) => l.ticks(t));
    return {
      parts: [back.id, mate.id],
      from,
      to: [from[0], from[1] - l.ticks(chosen.length), from[2]],
      radius: l.ticks(chosen.diameter) / 2,
    };
  };
  const isFree = (at: number) => !bores.meets(boreAt(at));
  const row = clearPlaces(l, { spacing, low, high, first: 0, isFree });
  if (!row) screwsMeet(draft, back, mate);
  const fasteners = (row ?? []).map((place, i) => {
    bores.add(boreAt(l.ticks(place)));
    const n = i + 1;
    back.features.push({
      kind: 'hole',
      use: 'clearance',
      id: `${back.id}#${mate.id}:${n}`,
      purpose: `screw into the ${mate.name}`,
      side: 'under',
      at: [
        inPart(
          draft,
          back,
          axisOf(back.place.length).axis,
          axisOf(back.place.length).axis === along ? place : line,
          'hole along the back',
        ),
        inPart(
          draft,
          back,
          axisOf(back.place.width).axis,
          axisOf(back.place.width).axis === along ? place : line,
          'hole across the back',
        ),
      ],
      diameter: clearance,
      countersink: chosen.head,
    });
    mate.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${mate.id}#${back.id}:${n}`,
      purpose: 'screw from the back',
      side: mateSide as Edge,
      at: [
        inPart(draft, mate, along, place, 'pilot along the edge'),
        inPart(draft, mate, axisOf(mate.place.thickness).axis, line, 'pilot up from the under face'),
      ],
      diameter: pilot,
      depth: holds,
    });
    draft.fasteners.push({
      id: `${id}:${n}`,
      joint: id,
      screw: chosen.screw.id,
      through: [back.id, mate.id],
      head: headAt(place, (t) => t),
      direction: '-y',
      length: chosen.length,
      diameter: chosen.diameter,
      holds,
      spare,
    });
    return `${id}:${n}`;
  });
  draft.joints.push({ ...joint, fasteners });
}
