import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bore, Bores } from './bores.ts';
import { contactBox, inPart, outward, overlapAlong, planeOf, sideLooking } from './contact.ts';
import type { Draft, DraftPart, Triple } from './draft.ts';
import type { Edge } from './feature.ts';
import { type Axis, axisOf } from './place.ts';
import { edgeScrew } from './screw-choice.ts';
import { spaceScrews } from './screw-spacing.ts';

/**
 * Screws the back to the back edge of a panel: clearance hole and countersink in the back, pilot in the edge, in
 * the middle of the edge's thickness. `lip` is how much of the edge a rabbet leaves for the back to lie on.
 */
export function backJoint(draft: Draft, bores: Bores, back: DraftPart, mate: DraftPart, lip?: Traced): void {
  const l = draft.ledger;
  const along: Axis = axisOf(mate.place.length).axis;
  const across: Axis = along === 0 ? 2 : 0;
  const id = `${back.id}>${mate.id}`;
  const mateSide = sideLooking(mate.place, '+y');
  const touch = contactBox(draft, back, 'show', mate);
  const joint = {
    id,
    kind: lip === undefined ? ('butt' as const) : ('rabbet' as const),
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
  const line = chosen && screwLine(draft, mate, across, chosen.head, lip);
  if (!chosen || line === undefined || l.ticks(length) <= 0) {
    draft.snags.push({
      code: 'screws.none-for-edge',
      level: 'stop',
      where: { part: back.id, record: back.record },
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
  const root = l.ratio('root of the screw', chosen.diameter, SETTING_OUT.rootShare);
  const pilot = l.ratio('pilot hole for the screw', root, SETTING_OUT.pilotShare);
  const clearance = l.sum('clearance hole for the screw', chosen.diameter, l.row(SETTING_OUT.clearanceExtra));
  const holds = l.less('how deep the screw stands in the edge', chosen.length, back.thickness);
  const spare = l.less('wood left beyond the screw', mateDepth(draft, mate), holds);
  const outer = planeOf(back, 'under');
  const spacing = spaceScrews(l, 'back', length, l.row(SETTING_OUT.setStep));
  const fasteners = spacing.at.map((from, i) => {
    const straight = l.sum('place of the screw', low, from);
    const headAt = (place: Traced) => {
      const head: Traced[] = [];
      head[1] = outer;
      head[along] = place;
      head[across] = line;
      return head as unknown as Triple;
    };
    const boreAt = (place: Traced): Bore => {
      const f = headAt(place).map((t) => l.ticks(t)) as unknown as [number, number, number];
      return {
        parts: [back.id, mate.id],
        from: f,
        to: [f[0], f[1] - l.ticks(chosen.length), f[2]],
        radius: l.ticks(chosen.diameter) / 2,
      };
    };
    const step = l.row(SETTING_OUT.moveAside);
    const tries = [
      straight,
      ...[1, 2, 3].map((n) =>
        l.sum('place of the screw, moved clear of another', straight, l.times('steps aside', step, n)),
      ),
    ];
    const place = tries.find((p) => !bores.meets(boreAt(p))) ?? straight;
    bores.add(boreAt(place));
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
      head: headAt(place),
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

/**
 * The line the screws stand on: the middle of the edge, or as near to it as the head may come to a rabbet's
 * shoulder. Undefined when that would be more than the trade's 1 mm off the middle.
 */
function screwLine(
  draft: Draft,
  mate: DraftPart,
  across: Axis,
  head: Traced,
  lip: Traced | undefined,
): Traced | undefined {
  const l = draft.ledger;
  const half = l.ratio('middle of the edge', mate.thickness, SETTING_OUT.half);
  if (lip === undefined) return l.sum('middle of the edge', mate.box.min[across], half);
  const reach = l.less(
    'as near to the shoulder as the head may come',
    lip,
    l.ratio('half the head', head, SETTING_OUT.half),
    l.row(SETTING_OUT.headClear),
  );
  const off = l.least('from the inner face to the line of screws', half, reach);
  if (l.ticks(half) - l.ticks(off) > l.ticks(l.row(SETTING_OUT.panelEdgeCentre))) return undefined;
  // The rabbet is open to the inner face, which is the under face of either side.
  const inner = planeOf(mate, 'under');
  return axisOf(outward(mate.place, 'under')).sign > 0
    ? l.less('line of screws in the edge', inner, off)
    : l.sum('line of screws in the edge', inner, off);
}

function mateDepth(draft: Draft, mate: DraftPart): Traced {
  return draft.ledger.less('depth of the panel', mate.box.max[1], mate.box.min[1]);
}
