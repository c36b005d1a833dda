import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { inPart, sideLooking } from '../joints/contact.ts';
import { axisOf } from '../place.ts';
import { buttFigures, type Chosen, chooseHinge, type Hanging, screwTooLong, sized } from './hinge-choice.ts';
import { boreOfCup, type Cup, cupOf, plateBores, plateLine, roomForCup } from './hinge-cup.ts';
import { placesOf } from './hinge-places.ts';

/** Chooses a hinge, finds the hinges' places and bores for them. */
export function hangOnHinges(draft: Draft, bores: Bores, h: Hanging): void {
  const hinge = chooseHinge(draft, h);
  if (!hinge) return;
  const chosen = sized(draft, hinge);
  if (screwTooLong(draft, h, chosen)) return;
  const cup = hinge.kind === 'cup' ? cupOf(draft, hinge, draft.edged.get(h.part.id)?.get(h.hung)) : undefined;
  if (cup && !roomForCup(draft, h, cup)) return;
  const places = placesOf(draft, bores, h, chosen, cup);
  if (!places) return;
  if (cup) places.forEach((along, i) => bore(draft, bores, h, chosen, cup, along, i + 1));
  draft.doors.push({
    part: h.part.id,
    record: h.door.id,
    hang: h.door.hang,
    hung: h.hung,
    post: h.post.id,
    below: h.below.id,
    opening: h.opening,
    gap: h.gap,
    hinges: places,
    ...(hinge.kind === 'butt'
      ? buttFigures(draft, hinge)
      : {
          hinge: hinge.id,
          screw: chosen.screw.id,
          screwsPerHinge: 4,
          screwLength: chosen.length,
          screwDiameter: chosen.diameter,
          pilot: chosen.pilot,
        }),
    ...(cup ? { cup: { diameter: cup.diameter, plateScrews: cup.plateScrews } } : {}),
  });
}

/** The holes of one hinge: cup and two pilots in the door's back, two pilots in the upright. */
function bore(
  draft: Draft,
  bores: Bores,
  h: Hanging,
  chosen: Chosen,
  cup: Cup,
  along: Traced,
  n: number,
): void {
  const l = draft.ledger;
  const { part, post, hung } = h;
  // The near edge of a door looks to the right.
  const across = (fromEdge: Traced) =>
    hung === 'right' ? fromEdge : l.less('the same from the other edge', part.width, fromEdge);
  const half = (t: Traced) => l.ratio('half of what lies between the screws', t, SETTING_OUT.half);
  part.features.push({
    kind: 'hole',
    use: 'cup',
    id: `${part.id}#hinge:${n}`,
    purpose: `cup of hinge ${n}`,
    side: 'under',
    at: [along, across(cup.middle)],
    diameter: cup.diameter,
    depth: cup.deep,
  });
  const z = l.sum('height of the hinge', part.box.min[2], along);
  bores.add(boreOfCup(draft, h, cup, along));
  const face = sideLooking(post.place, hung === 'left' ? '+x' : '-x');
  const y = plateLine(draft, h, cup);
  const ends = ['lower', 'upper'] as const;
  for (const end of ends) {
    const off = (t: Traced, at: Traced) =>
      end === 'lower'
        ? l.less('lower screw of the hinge', at, half(t))
        : l.sum('upper screw of the hinge', at, half(t));
    part.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${part.id}#hinge:${n}:${end}`,
      purpose: `screw of hinge ${n}`,
      side: 'under',
      at: [off(cup.screws, along), across(cup.screwLine)],
      diameter: chosen.pilot,
      depth: chosen.length,
    });
    const upright = axisOf(post.place.length).axis;
    post.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${post.id}#${part.id}:${n}:${end}`,
      purpose: `plate of hinge ${n} of the ${part.name}`,
      side: face,
      at: [
        inPart(draft, post, upright, off(cup.plateScrews, z), 'screw of the plate along the upright'),
        inPart(draft, post, axisOf(post.place.width).axis, y, 'screw of the plate across the upright'),
      ],
      diameter: chosen.pilot,
      depth: chosen.length,
    });
  }
  for (const b of plateBores(draft, h, chosen, cup, l.ticks(z))) bores.add(b);
}
