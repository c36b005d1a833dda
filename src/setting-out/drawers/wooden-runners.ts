import type { RecordOf } from '../../job/index.ts';
import { DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox, inPart, sideLooking } from '../joints/contact.ts';
import { type ChosenScrew, faceScrew } from '../joints/screw-choice.ts';
import { clearanceHole, edgePilot } from '../joints/screw-holes.ts';
import { axisOf } from '../place.ts';
import type { Space } from '../spaces/openings.ts';
import type { WoodenRunners } from './drawer.ts';
import type { DrawerBox } from './drawer-box.ts';
import type { WoodenChoice } from './wooden-choice.ts';

/** A box between its uprights, to run on strips that are screwed to them. */
export interface WoodenSpec {
  readonly record: RecordOf<'drawers'>;
  readonly suffix: string;
  readonly name: string;
  readonly box: DrawerBox;
  readonly space: Space;
  readonly strips: WoodenChoice;
}

/** Steps up and down from the middle of the box, the shortest first. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4];

/**
 * Strips on both uprights, and grooves for them in the outer faces of the box's sides: in the middle of its height, or
 * so many steps above or below that no screw meets another. A stop where there is no place, or no screw.
 */
export function woodenRunners(draft: Draft, bores: Bores, spec: WoodenSpec): WoodenRunners | undefined {
  const l = draft.ledger;
  const { box, space, strips, record, name } = spec;
  const screws = [space.left, space.right].map((post) => faceScrew(draft, strips.thick, post.thickness));
  const [left, right] = screws;
  if (!left || !right) {
    draft.stop(
      'drawers.no-screw',
      record,
      'runnerStrip',
      `No countersunk screw on the shop’s list goes through a wooden runner of the ${name} into an upright without coming through.`,
      { says: 'Put one on the list that is about 4 mm shorter than both thicknesses together.' },
    );
    return undefined;
  }
  const rear = box.left.box.max[1];
  const ahead = l.sum(
    'front end of the runner, behind the end of its groove',
    stopAt(draft, box),
    l.row(DRAWERS.woodAhead),
  );
  const places = placesAlong(draft, ahead, rear);
  const aside = l.row(DRAWERS.aside);
  const middle = l.round(
    'lower wall of the groove above the box’s edge',
    l.share(
      'half of what the groove leaves of the side',
      l.less('side without its groove', box.left.width, strips.groove.width),
      [1, 1],
      0,
    ),
    draft.stepOf('router'),
    'down',
  );
  const bottom = box.groove === undefined ? 0 : l.ticks(box.bottom.box.max[2]) - l.ticks(box.left.box.min[2]);
  const edge = l.ticks(l.row(DRAWERS.woodEdge));
  const foot = l.ticks(box.left.box.min[2]);
  const steps = STEPS.find((n) => {
    const up = l.ticks(middle) + n * l.ticks(aside);
    const inside =
      up >= Math.max(edge, bottom) && up + l.ticks(strips.groove.width) + edge <= l.ticks(box.left.width);
    const z = foot + up + l.ticks(strips.groove.width) / 2;
    return inside && boresAt(draft, spec, [left, right], places, z).every((b) => !bores.meets(b));
  });
  if (steps === undefined) {
    draft.stop(
      'drawers.no-place',
      record,
      'runnerStrip',
      `The wooden runners of the ${name} find no place on its sides, clear of its bottom and of other screws.`,
      { says: 'Give the drawer another height, or use lower strips.' },
    );
    return undefined;
  }
  const by = l.times('steps aside', aside, Math.abs(steps));
  const up =
    steps === 0
      ? middle
      : steps > 0
        ? l.sum('lower wall of the groove, moved clear of others', middle, by)
        : l.less('lower wall of the groove, moved clear of others', middle, by);
  for (const side of [box.left, box.right]) groove(draft, side, spec, up);
  const under = l.sum(
    'underside of the runner, in the middle of its groove',
    box.left.box.min[2],
    up,
    l.share('half the air', l.less('air round the runner', strips.groove.width, strips.high), [1, 1], 0),
  );
  const made = (['left', 'right'] as const).map((hand) => strip(draft, spec, hand, ahead, rear, under));
  [space.left, space.right].forEach((post, i) => {
    screwOn(draft, bores, made[i]!, post, screws[i]!, places);
  });
  return { left: made[0]!.id, right: made[1]!.id, up, ...strips.groove };
}

/** Where the grooves stop, behind the front of the box. */
function stopAt(draft: Draft, box: DrawerBox): Traced {
  return draft.ledger.sum('end of the groove', box.left.box.min[1], draft.ledger.row(DRAWERS.woodStop));
}

/** Screws near both ends, and one between where it is long. */
function placesAlong(draft: Draft, from: Traced, to: Traced): readonly Traced[] {
  const l = draft.ledger;
  const end = l.row(DRAWERS.woodScrew);
  const [first, last] = [
    l.sum('first screw of the runner', from, end),
    l.less('last screw of the runner', to, end),
  ];
  const long = l.less('length of the runner', to, from);
  if (l.ticks(long) <= l.ticks(l.row(DRAWERS.woodLong))) return [first, last];
  return [first, l.sum('middle of the runner', from, l.ratio('half of it', long, SETTING_OUT.half)), last];
}

function boresAt(
  draft: Draft,
  { space, strips }: WoodenSpec,
  screws: readonly [ChosenScrew, ChosenScrew],
  places: readonly Traced[],
  z: number,
) {
  const l = draft.ledger;
  return [space.left, space.right].flatMap((post, i) => {
    const into = i === 0 ? -1 : 1;
    const face = l.ticks(i === 0 ? post.box.max[0] : post.box.min[0]);
    const { length, diameter } = screws[i]!;
    const tip = face + into * (l.ticks(length) - l.ticks(strips.thick));
    return places.map((p) => ({
      parts: [post.id],
      from: [face, l.ticks(p), z] as const,
      to: [tip, l.ticks(p), z] as const,
      radius: l.ticks(diameter) / 2,
    }));
  });
}

/** The groove in a side's outer face, from its back end to where it stops. */
function groove(draft: Draft, side: DraftPart, { strips, name }: WoodenSpec, up: Traced): void {
  const l = draft.ledger;
  const stop = l.row(DRAWERS.woodStop);
  const fromFront = axisOf(side.place.length).sign > 0;
  side.features.push({
    kind: 'groove',
    id: `${side.id}#runner`,
    purpose: `for the runner of ${name}`,
    face: 'show',
    edge: 'near',
    inset: up,
    ...strips.groove,
    from: fromFront ? stop : draft.nothing,
    to: fromFront ? side.length : l.less('from the back end to where the groove stops', side.length, stop),
  });
}

function strip(
  draft: Draft,
  { record, suffix, name, space, strips }: WoodenSpec,
  hand: 'left' | 'right',
  ahead: Traced,
  rear: Traced,
  under: Traced,
): DraftPart {
  const l = draft.ledger;
  const post = hand === 'left' ? space.left : space.right;
  const x =
    hand === 'left' ? post.box.max[0] : l.less('inner face of the runner', post.box.min[0], strips.thick);
  return draft.panel({
    record: record.id,
    role: `${hand}-runner${suffix}`,
    name: `${hand} runner of ${name}`,
    family: 'drawer runner',
    lot: strips.lot,
    at: [x, ahead, under],
    size: [strips.thick, l.less('length of the runner, to the box’s back end', rear, ahead), strips.high],
    // The show face looks to the drawer: screws go in there.
    length: hand === 'left' ? '+y' : '-y',
    width: '+z',
  });
}

/** Screws a strip to its upright. */
function screwOn(
  draft: Draft,
  bores: Bores,
  strip: DraftPart,
  post: DraftPart,
  screw: ChosenScrew,
  places: readonly Traced[],
): void {
  const l = draft.ledger;
  const toLeft = l.ticks(strip.box.min[0]) === l.ticks(post.box.max[0]);
  const direction = toLeft ? '-x' : '+x';
  const side = sideLooking(strip.place, direction);
  const mateSide = sideLooking(post.place, toLeft ? '+x' : '-x');
  const [head, face] = toLeft ? [strip.box.max[0], post.box.max[0]] : [strip.box.min[0], post.box.min[0]];
  const z = l.sum(
    'middle of the runner',
    strip.box.min[2],
    l.ratio('half of it', strip.width, SETTING_OUT.half),
  );
  const id = `${strip.id}>${post.id}`;
  const holds = l.less('how deep the screw stands in the upright', screw.length, strip.thickness);
  const [clearance, pilot] = [clearanceHole(draft, screw), edgePilot(draft, screw, draft.lot(post.lot))];
  const fasteners = places.map((y, i) => {
    const at = (part: DraftPart) => {
      const on = (of: 'length' | 'width') => {
        const { axis } = axisOf(part.place[of]);
        return inPart(draft, part, axis, axis === 1 ? y : z, 'screw of the runner');
      };
      return [on('length'), on('width')] as const;
    };
    const from = [l.ticks(face), l.ticks(y), l.ticks(z)] as const;
    bores.add({
      parts: [post.id],
      from,
      to: [from[0] + (toLeft ? -1 : 1) * l.ticks(holds), from[1], from[2]],
      radius: l.ticks(screw.diameter) / 2,
    });
    strip.features.push({
      kind: 'hole',
      use: 'clearance',
      id: `${strip.id}#${post.id}:${i + 1}`,
      purpose: `screw into the ${post.name}`,
      side: sideLooking(strip.place, toLeft ? '+x' : '-x'),
      at: at(strip),
      diameter: clearance,
      countersink: screw.head,
    });
    post.features.push({
      kind: 'hole',
      use: 'pilot',
      id: `${post.id}#${strip.id}:${i + 1}`,
      purpose: `${strip.name}`,
      side: mateSide,
      at: at(post),
      diameter: pilot,
      depth: holds,
    });
    draft.fasteners.push({
      id: `${id}:${i + 1}`,
      joint: id,
      screw: screw.screw.id,
      through: [strip.id, post.id],
      head: [head, y, z],
      direction,
      length: screw.length,
      diameter: screw.diameter,
      holds,
      spare: l.less('wood left before the far face', post.thickness, holds),
    });
    return `${id}:${i + 1}`;
  });
  draft.joints.push({
    id,
    kind: 'butt',
    duty: 'drawer',
    hold: 'face-screws',
    part: strip.id,
    side,
    mate: post.id,
    mateSide,
    contact: contactBox(draft, strip, side, post),
    fasteners,
  });
}
