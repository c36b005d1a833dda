import type { HingeOf } from '../../job/index.ts';
import { DOORS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bore } from '../joints/bores.ts';
import { type Chosen, type Hanging, ofHinge } from './hinge-choice.ts';

/** The sizes of a cup hinge. */
export interface Cup {
  readonly diameter: Traced;
  /** How deep its hole is bored: as deep as the cup or a little deeper, so that this never stands proud. */
  readonly deep: Traced;
  /** From the door's edge to the cup's middle, and to its two screws. */
  readonly middle: Traced;
  readonly screwLine: Traced;
  readonly screws: Traced;
  readonly plateScrews: Traced;
  readonly plateBehind: Traced;
}

/** Reads a cup hinge's measures; inside a strip on the edge that the door hangs on, as far from the board's edge. */
export function cupOf(draft: Draft, hinge: HingeOf<'cup'>, strip?: DraftPart): Cup {
  const l = draft.ledger;
  const diameter = ofHinge(draft, hinge, 'cup');
  const ofDoor = l.sum(
    'from the door’s edge to the middle of the cup',
    ofHinge(draft, hinge, 'edge'),
    l.ratio('half the cup', diameter, SETTING_OUT.half),
  );
  const middle = strip ? l.less('the same inside the edging', ofDoor, strip.thickness) : ofDoor;
  return {
    diameter,
    deep: l.round(
      'deep enough for the cup, as the drill is set',
      ofHinge(draft, hinge, 'deep'),
      draft.stepOf('drill'),
      'up',
    ),
    middle,
    screwLine: l.sum(
      'from the door’s edge to the cup’s screws',
      middle,
      ofHinge(draft, hinge, 'cupScrewsBehind'),
    ),
    screws: ofHinge(draft, hinge, 'cupScrews'),
    plateScrews: ofHinge(draft, hinge, 'plateScrews'),
    plateBehind: ofHinge(draft, hinge, 'plateBehind'),
  };
}

/** Whether door and upright are large and thick enough for the hinge. */
export function roomForCup(draft: Draft, h: Hanging, cup: Cup): boolean {
  const l = draft.ledger;
  if (l.ticks(h.part.thickness) - l.ticks(cup.deep) < l.ticks(l.row(DOORS.cupSkin))) {
    draft.stop(
      'hinges.cup-too-deep',
      h.door,
      'board',
      `A hole ${toMm(l.ticks(cup.deep))} mm deep for a cup leaves less than ${toMm(l.ticks(l.row(DOORS.cupSkin)))} mm of the ${h.part.name}.`,
      { says: 'Make the door of a thicker board, or use a hinge with a shallower cup.' },
    );
    return false;
  }
  const strip = draft.edged.get(h.part.id)?.get(h.hung);
  if (strip && l.ticks(cup.middle) < l.ticks(cup.diameter) / 2 + l.ticks(l.row(DOORS.cupRim))) {
    draft.stop(
      'hinges.cup-in-edging',
      h.door,
      'hinge',
      `The cup of its hinges would break through the board’s edge behind the edging of the ${h.part.name}.`,
      { says: 'Edge it with tape or thinner strips, or use a hinge whose cup stands further in.' },
    );
    return false;
  }
  const needs = l.ticks(cup.screwLine) + l.ticks(cup.diameter);
  const high = 2 * (l.ticks(cup.screws) + l.ticks(cup.diameter));
  const behind = l.ticks(plateLine(draft, h, cup));
  if (
    l.ticks(h.part.width) >= needs &&
    l.ticks(h.part.length) >= high &&
    behind < l.ticks(h.post.box.max[1]) - l.ticks(cup.diameter) / 2
  )
    return true;
  draft.stop('doors.no-room', h.door, 'hang', `The ${h.part.name} is too small for its hinges.`, {
    says: 'Make its opening larger, or close it in another way.',
  });
  return false;
}

/** How far behind the case's front the screws of a plate stand. */
export function plateLine(draft: Draft, h: Hanging, cup: Cup): Traced {
  const l = draft.ledger;
  return h.door.hang === 'inset'
    ? l.sum('screws of the plate, behind the door', h.frontOfCase, h.part.thickness, cup.plateBehind)
    : l.sum('screws of the plate, behind the case’s front', h.frontOfCase, cup.plateBehind);
}

/** The hole for a cup and what lies round it on the door's back, so far along the door. */
export function boreOfCup(draft: Draft, h: Hanging, cup: Cup, along: Traced): Bore {
  const l = draft.ledger;
  const { min, max } = h.part.box;
  const aside = l.ticks(cup.middle);
  const x = h.hung === 'left' ? l.ticks(min[0]) + aside : l.ticks(max[0]) - aside;
  const z = l.ticks(min[2]) + l.ticks(along);
  const flange = Math.max(l.ticks(cup.diameter), l.ticks(cup.screws)) / 2 + l.ticks(cup.diameter) / 8;
  return {
    parts: [h.part.id],
    from: [x, l.ticks(max[1]), z],
    to: [x, l.ticks(max[1]) - l.ticks(cup.deep), z],
    radius: flange,
  };
}

/** The screws of a plate, for a hinge at a height. */
export function plateBores(draft: Draft, h: Hanging, chosen: Chosen, cup: Cup, z: number): readonly Bore[] {
  const l = draft.ledger;
  const y = l.ticks(plateLine(draft, h, cup));
  const into = h.hung === 'left' ? -1 : 1;
  const x = l.ticks(h.hung === 'left' ? h.post.box.max[0] : h.post.box.min[0]);
  const apart = l.ticks(cup.plateScrews) / 2;
  return [z - apart, z + apart].map((at) => ({
    parts: [h.post.id],
    from: [x, y, at],
    to: [x + into * l.ticks(chosen.length), y, at],
    radius: l.ticks(chosen.diameter) / 2,
  }));
}
