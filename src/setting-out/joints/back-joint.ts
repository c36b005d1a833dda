import type { Draft, DraftPart } from '../draft.ts';
import type { Edge } from '../feature.ts';
import { axisOf } from '../place.ts';
import type { Bores } from './bores.ts';
import { contactBox, overlapAlong, sideLooking } from './contact.ts';
import { edgeScrew } from './screw-choice.ts';
import { throughScrews } from './through-screws.ts';

/**
 * Screws the back to the back edge of a panel, in the middle of the edge's thickness.
 */
export function backJoint(draft: Draft, bores: Bores, back: DraftPart, mate: DraftPart): void {
  const l = draft.ledger;
  const id = `${back.id}>${mate.id}`;
  const mateSide = sideLooking(mate.place, '+y') as Edge;
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
  const [low, high] = overlapAlong(draft, back, mate, axisOf(mate.place.length).axis);
  const length = l.less('length of the joint', high, low);
  const depth = l.less('depth of the edge', mate.box.max[1], mate.box.min[1]);
  const chosen = edgeScrew(draft, { under: back.thickness, edge: mate.thickness, depth });
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
    draft.joints.push({ fasteners: [], ...joint });
    return;
  }
  const fasteners = throughScrews(draft, bores, {
    joint: id,
    part: back,
    side: 'show',
    mate,
    mateSide,
    duty: 'back',
    screw: chosen,
  });
  draft.joints.push({ fasteners, ...joint });
}
