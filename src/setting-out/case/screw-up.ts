import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox, inPart, sideLooking } from '../joints/contact.ts';
import type { ChosenScrew } from '../joints/screw-choice.ts';
import { clearanceHole, edgePilot } from '../joints/screw-holes.ts';
import { axisOf } from '../place.ts';

interface UpSpec {
  readonly part: DraftPart;
  readonly mate: DraftPart;
  readonly screw: ChosenScrew;
  /** Where its head is. */
  readonly at: Triple;
  /** How much of the part, from its start, doesn’t lie against the mate. */
  readonly tongue: Traced;
}

/** One screw from below through a small part that lies against the underside of another, and the joint of the two. */
export function screwUp(draft: Draft, bores: Bores, { part, mate, screw, at, tongue }: UpSpec): void {
  const l = draft.ledger;
  const holds = l.less('how deep the screw stands in the top', screw.length, part.thickness);
  const on = (p: DraftPart) =>
    (['length', 'width'] as const).map((run) => {
      const { axis } = axisOf(p.place[run]);
      return inPart(draft, p, axis, at[axis], `screw along the ${run}`);
    }) as unknown as readonly [Traced, Traced];
  part.features.push({
    kind: 'hole',
    use: 'clearance',
    id: `${part.id}#${mate.id}:1`,
    purpose: `screw into the ${mate.name}`,
    side: 'under',
    at: on(part),
    diameter: clearanceHole(draft, screw),
    countersink: screw.head,
  });
  mate.features.push({
    kind: 'hole',
    use: 'pilot',
    id: `${mate.id}#${part.id}:1`,
    purpose: `screw from the ${part.name}`,
    side: sideLooking(mate.place, '-z'),
    at: on(mate),
    diameter: edgePilot(draft, screw, draft.lot(mate.lot)),
    depth: holds,
  });
  const [x, y, z] = at.map((t) => l.ticks(t)) as unknown as [number, number, number];
  bores.add({
    parts: [part.id, mate.id],
    from: [x, y, z],
    to: [x, y, z + l.ticks(screw.length)],
    radius: l.ticks(screw.diameter) / 2,
  });
  const id = `${part.id}>${mate.id}`;
  draft.fasteners.push({
    id: `${id}:1`,
    joint: id,
    screw: screw.screw.id,
    through: [part.id, mate.id],
    head: at,
    direction: '+z',
    length: screw.length,
    diameter: screw.diameter,
    holds,
    spare: l.less('wood left beyond the screw', mate.thickness, holds),
  });
  const { min, max } = contactBox(draft, part, 'show', mate);
  const positive = axisOf(part.place.length).sign > 0;
  const shoulder = positive
    ? l.sum('shoulder of the button', min[0], tongue)
    : l.less('shoulder of the button', max[0], tongue);
  draft.joints.push({
    id,
    kind: 'butt',
    duty: 'button',
    hold: 'face-screws',
    part: part.id,
    side: 'show',
    mate: mate.id,
    mateSide: 'under',
    contact: positive ? { min: [shoulder, min[1], min[2]], max } : { min, max: [shoulder, max[1], max[2]] },
    fasteners: [`${id}:1`],
  });
}
