import type { RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox, inPart, sideLooking } from '../joints/contact.ts';
import { faceJoint } from '../joints/face-joint.ts';
import type { Joint } from '../joints/joint.ts';
import { screwsMeet } from '../joints/move-aside.ts';
import { pocketJoint } from '../joints/pocket-joint.ts';
import { faceScrew } from '../joints/screw-choice.ts';
import { clearanceHole, edgePilot } from '../joints/screw-holes.ts';
import { axisOf, type TracedBox } from '../place.ts';
import type { DrawerBox } from './drawer-box.ts';

/** A drawer whose parts are there and are to be joined. */
export interface JoinableDrawer {
  readonly record: RecordOf<'drawers'>;
  readonly name: string;
  readonly box: DrawerBox;
  readonly face: DraftPart;
}

/** Joins the box of a drawer, its bottom and its front; false where no screw holds the front (a stop says so). */
export function joinDrawer(draft: Draft, bores: Bores, spec: JoinableDrawer): boolean {
  const { box } = spec;
  for (const end of [box.front, box.back])
    for (const [edge, side] of cornersOf(box, end)) corner(draft, bores, box, end, edge, side);
  bottom(draft, box);
  return screwOn(draft, bores, spec);
}

/** The two ends of a box's front or back, and the sides that they meet. */
function cornersOf(box: DrawerBox, end: DraftPart): readonly (readonly ['start' | 'end', DraftPart])[] {
  return end === box.front
    ? [
        ['start', box.left],
        ['end', box.right],
      ]
    : [
        ['start', box.right],
        ['end', box.left],
      ];
}

function corner(
  draft: Draft,
  bores: Bores,
  box: DrawerBox,
  end: DraftPart,
  edge: 'start' | 'end',
  side: DraftPart,
): void {
  if (box.joint === 'pocket-screws') {
    // The pockets are in the faces that look out: a front covers them before, and nobody sees them behind.
    pocketJoint(draft, bores, { part: end, edge, face: 'show', mate: side, duty: 'drawer', standing: [] });
    return;
  }
  if (box.joint === 'screws') {
    faceJoint(draft, bores, {
      part: end,
      edge,
      mate: side,
      duty: 'drawer',
      glued: true,
      plugs: { wanted: false, asked: false },
      standing: [],
    });
    return;
  }
  const dado = box.joint === 'dado' && end === box.back;
  draft.joints.push({
    id: `${end.id}>${side.id}`,
    kind: dado ? 'dado' : 'rabbet',
    duty: 'drawer',
    hold: 'glue',
    part: end.id,
    side: edge,
    mate: side.id,
    mateSide: 'under',
    contact: contactBox(draft, end, edge, side),
    fasteners: [],
    letIn: {
      depth: box.deep!,
      sideways: dado ? draft.ledger.row(SETTING_OUT.dadoClear) : draft.nothing,
      endways: draft.nothing,
    },
  });
}

/** The bottom is glued: in its grooves and under the back, or under all of the box. */
function bottom(draft: Draft, box: DrawerBox): void {
  const common = { duty: 'drawer', hold: 'glue', part: box.bottom.id, fasteners: [] } as const;
  const under = (mate: DraftPart): Joint => ({
    id: `${box.bottom.id}>${mate.id}`,
    kind: 'butt',
    side: 'show',
    mate: mate.id,
    mateSide: 'near',
    contact: contactBox(draft, box.bottom, 'show', mate),
    ...common,
  });
  const { groove } = box;
  if (groove === undefined) {
    for (const mate of [box.left, box.right, box.front, box.back]) draft.joints.push(under(mate));
    return;
  }
  for (const mate of [box.left, box.right, box.front])
    draft.joints.push({
      letIn: {
        depth: groove,
        sideways: draft.ledger.row(SETTING_OUT.dadoClear),
        endways: draft.ledger.row(DRAWERS.bottomClear),
      },
      ...under(mate),
      kind: 'groove',
      side: 'under',
      mateSide: 'under',
      contact: onGroove(draft, box, mate),
    });
  draft.joints.push(under(box.back));
}

/** Where the bottom rests on the lower wall of a groove: along a side only between what its corners take of that wall. */
function onGroove(draft: Draft, box: DrawerBox, mate: DraftPart): TracedBox {
  const l = draft.ledger;
  const rest = contactBox(draft, box.bottom, 'under', mate);
  if (mate === box.front || box.deep === undefined) return rest;
  const dado = box.joint === 'dado' ? l.row(SETTING_OUT.dadoClear) : draft.nothing;
  const rear = l.less('where the wall ends, before the corner', box.back.box.min[1], dado);
  return {
    min: [rest.min[0], box.front.box.max[1], rest.min[2]],
    max: [rest.max[0], rear, rest.max[2]],
  };
}

/** Screws from inside through the box's front into the front that is seen, in two columns and one row or two. */
function screwOn(draft: Draft, bores: Bores, { record, name, box, face }: JoinableDrawer): boolean {
  const l = draft.ledger;
  const inner = box.front;
  const screw = faceScrew(draft, inner.thickness, face.thickness);
  const id = `${inner.id}>${face.id}`;
  if (!screw) {
    draft.stop(
      'drawers.no-screw',
      record,
      'frontBoard',
      `No countersunk screw on the shop’s list goes from inside the ${name} into its front without coming through.`,
      { says: 'Put one on the list that is about 4 mm shorter than both thicknesses together.' },
    );
    return false;
  }
  const holds = l.less('how deep the screw stands in the front', screw.length, inner.thickness);
  const [clearance, pilot] = [clearanceHole(draft, screw), edgePilot(draft, screw, draft.lot(face.lot))];
  const headY = inner.box.max[1];
  const isFree = (x: number, z: number) =>
    !bores.meets({
      parts: [inner.id, face.id],
      from: [x, l.ticks(headY), z],
      to: [x, l.ticks(headY) - l.ticks(screw.length), z],
      radius: l.ticks(screw.diameter) / 2,
    });
  const places = placesOf(draft, box, face, isFree);
  if (places.length === 0) {
    screwsMeet(draft, inner, face);
    return false;
  }
  const fasteners = places.map(([x, z], i) => {
    const n = i + 1;
    const at = (part: DraftPart) => {
      const on = (of: 'length' | 'width') => {
        const { axis } = axisOf(part.place[of]);
        return inPart(draft, part, axis, axis === 0 ? x : z, 'screw of the front');
      };
      return [on('length'), on('width')] as const;
    };
    const head = [x, headY, z] as const;
    const from = [l.ticks(x), l.ticks(headY), l.ticks(z)] as const;
    bores.add({
      parts: [inner.id, face.id],
      from,
      to: [from[0], from[1] - l.ticks(screw.length), from[2]],
      radius: l.ticks(screw.diameter) / 2,
    });
    inner.features.push({
      kind: 'hole',
      use: 'clearance',
      id: `${inner.id}#${face.id}:${n}`,
      purpose: `screw into the ${face.name}`,
      side: sideLooking(inner.place, '+y'),
      at: at(inner),
      diameter: clearance,
      countersink: screw.head,
    });
    face.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${face.id}#${inner.id}:${n}`,
      purpose: 'screw from inside the box',
      side: sideLooking(face.place, '+y'),
      at: at(face),
      diameter: pilot,
      depth: holds,
    });
    draft.fasteners.push({
      id: `${id}:${n}`,
      joint: id,
      screw: screw.screw.id,
      through: [inner.id, face.id],
      head,
      direction: '-y',
      length: screw.length,
      diameter: screw.diameter,
      holds,
      spare: l.less('wood left before the front’s face', face.thickness, holds),
    });
    return `${id}:${n}`;
  });
  draft.joints.push({
    id,
    kind: 'butt',
    duty: 'drawer',
    hold: 'face-screws',
    part: inner.id,
    side: 'show',
    mate: face.id,
    mateSide: 'under',
    contact: contactBox(draft, inner, 'show', face),
    fasteners,
  });
  return true;
}

/** The height of a single row: in the middle of the free wood, or lower, as far from the upper edge as a row should be. */
function oneRow(draft: Draft, front: DraftPart, face: DraftPart, foot: Traced, head: Traced): Traced {
  const l = draft.ledger;
  const edge = l.row(DRAWERS.frontRow);
  const high = l.less('free height for screws', head, foot);
  const middle = l.sum(
    'screws of the front, in the middle',
    foot,
    l.ratio('half of it', high, SETTING_OUT.half),
  );
  const below = l.less('screws of the front, clear of its upper edge', head, edge);
  const low = Math.max(l.ticks(front.box.min[2]), l.ticks(face.box.min[2]));
  const lower = l.ticks(below) < l.ticks(middle) && l.ticks(below) - low >= l.ticks(edge);
  return lower && l.ticks(below) > l.ticks(foot) ? below : middle;
}

/** The screws of a front are moved inward by so many steps at most. */
const STEPS_INWARD = [0, 1, 2, 3, 4, 5, 6];

/**
 * Where the screws of a front stand: near both ends of the box, further in where screws of the corners would be met, in
 * one row or two by the box's height.
 */
function placesOf(
  draft: Draft,
  { front, bottom, groove }: DrawerBox,
  face: DraftPart,
  isFree: (x: number, z: number) => boolean,
): readonly (readonly [Traced, Traced])[] {
  const l = draft.ledger;
  const left = l.sum('left screws of the front', front.box.min[0], l.row(DRAWERS.frontEnd));
  const right = l.less('right screws of the front', front.box.max[0], l.row(DRAWERS.frontEnd));
  // Above the bottom there is free wood only.
  const foot = groove === undefined ? front.box.min[2] : bottom.box.max[2];
  // A box that reaches up further than its front has wood behind the front alone.
  const head = l.ticks(face.box.max[2]) < l.ticks(front.box.max[2]) ? face.box.max[2] : front.box.max[2];
  const high = l.less('free height for screws', head, foot);
  const edge = l.row(DRAWERS.frontRow);
  const rows =
    l.ticks(high) >= l.ticks(l.row(DRAWERS.frontRowsFrom))
      ? [l.sum('lower screws of the front', foot, edge), l.less('upper screws of the front', head, edge)]
      : [oneRow(draft, front, face, foot, head)];
  const columns =
    l.ticks(right) - l.ticks(left) >= l.ticks(l.row(DRAWERS.frontEnd)) ? [left, right] : undefined;
  const middle = l.sum(
    'middle of the front',
    front.box.min[0],
    l.ratio('half', front.length, SETTING_OUT.half),
  );
  const step = l.row(DRAWERS.aside);
  // One that is moved from the middle of a narrow front must not come too near to its end.
  const offEnds = (x: number) =>
    x - l.ticks(front.box.min[0]) >= l.ticks(edge) && l.ticks(front.box.max[0]) - x >= l.ticks(edge);
  const clear = (x: Traced, inward: 1 | -1): Traced | undefined => {
    const steps = STEPS_INWARD.find((n) => {
      const at = l.ticks(x) + inward * n * l.ticks(step);
      return offEnds(at) && rows.every((z) => isFree(at, l.ticks(z)));
    });
    if (!steps) return steps === 0 ? x : undefined;
    const by = l.times('steps inward', step, steps);
    const why = 'screws of the front, moved clear of the corner';
    return inward > 0 ? l.sum(why, x, by) : l.less(why, x, by);
  };
  const at = columns ? [clear(columns[0]!, 1), clear(columns[1]!, -1)] : [clear(middle, 1)];
  return at.flatMap((x) => (x === undefined ? [] : rows.map((z) => [x, z] as const)));
}
