import { FROM_SIDES, type RecordOf } from '../../job/index.ts';
import { HOLES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { outward, planeOf, sideLooking } from '../joints/contact.ts';
import type { Side } from '../part.ts';
import { type Axis, axisOf, type Direction, type TracedBox } from '../place.ts';
import { extentOf } from '../spaces/extent-of.ts';
import { inPanel, isClear, middleAlong, panelsOf, regionOf, sidesAlong } from './panel-holes.ts';

type Row = RecordOf<'holes'>;

/** A panel that a row goes into: as it was asked for, or as the mirror image of that. */
interface Target {
  readonly part: DraftPart;
  readonly mirrored: boolean;
  /** The other side that it mirrors: at the heights there, whatever either side stands on. */
  readonly of?: DraftPart | undefined;
}

/**
 * Bores the rows of holes that a case's records ask for: those in its panels before anything is hung or screwed, so that
 * screws keep clear of them; those in its doors once these are hung, clear of their hinges.
 */
export function holeRows(draft: Draft, bores: Bores, frame: CaseFrame, into: 'panels' | 'doors'): void {
  for (const record of draft.tree.all('holes')) {
    const inDoors = draft.tree.get(record.parent)?.kind === 'door';
    if (draft.tree.caseOf(record.id) !== frame.box || inDoors !== (into === 'doors')) continue;
    for (const target of targetsOf(draft, record)) bore(draft, bores, record, target);
  }
}

/** Every panel of the record; the other side as well where it is mirrored; of a pair of doors the right one mirrors the left. */
function targetsOf(draft: Draft, record: Row): readonly Target[] {
  const asked = panelsOf(draft, record).map((part) => ({ part, mirrored: part.role === 'right-door' }));
  if (!record.mirror) return asked;
  const other = record.panel === 'left-side' ? 'right-side' : 'left-side';
  const of = asked[0]?.part;
  return [...asked, ...panelsOf(draft, record, other).map((part) => ({ part, mirrored: true, of }))];
}

function bore(draft: Draft, bores: Bores, record: Row, { part, mirrored, of }: Target): void {
  const own = regionOf(draft, record, part);
  const image = of && regionOf(draft, record, of);
  const region = own && image ? atHeightOf(own, image) : own;
  const side = region && sideOf(draft, record, part, mirrored);
  const axis = side && rowAxis(draft, record, part);
  if (!region || !side || axis === undefined) return;
  const l = draft.ledger;
  const through = axisOf(part.place.thickness).axis;
  const diameter = draft.field(record, 'diameter');
  const depth = record.depth === undefined ? undefined : draft.field(record, 'depth');
  if (depth !== undefined && l.ticks(part.thickness) - l.ticks(depth) < l.ticks(l.row(HOLES.floor))) {
    draft.stop(
      'holes.too-deep',
      record,
      'depth',
      `Holes ${record.depth} deep would leave too little of the ${part.name} behind them.`,
      { says: 'Bore them less deep, or right through: take “depth” and “face” out.' },
    );
    return;
  }
  const across = ([0, 1, 2] as const).find((k) => k !== axis && k !== through)!;
  const radius = l.ticks(diameter) / 2;
  const mouth = planeOf(part, side);
  const inward = -axisOf(outward(part.place, side)).sign;
  const end = l.ticks(mouth) + inward * l.ticks(depth ?? part.thickness);
  const deep = [Math.min(l.ticks(mouth), end), Math.max(l.ticks(mouth), end)] as const;
  const about = record.about === undefined ? region : extentOf(draft, record.about);
  // What isn't made is told elsewhere.
  if (!about) return;
  const beside = middleAlong(draft, record, region, across, mirrored, about);
  const middle = runsHalved(draft, record, part, about, axis, across);
  for (const [i, along] of placesAlong(draft, record, region, axis, mirrored, about).entries()) {
    const at: [Traced, Traced, Traced] = [mouth, mouth, mouth];
    at[axis] = along;
    at[across] = beside;
    const from: readonly [number, number, number] = [l.ticks(at[0]), l.ticks(at[1]), l.ticks(at[2])];
    const to: [number, number, number] = [...from];
    to[through] = end;
    const made = { parts: [part.id], from, to, radius };
    const half = [radius, radius, radius] as const;
    if (!isClear(draft, bores, record, part, { at, half, round: true, deep, bores: [made] })) return;
    part.features.push({
      kind: 'hole',
      id: `${part.id}#${record.id}:${i + 1}`,
      purpose: record.purpose ?? `“${record.id}”`,
      use: 'row',
      side,
      at: inPanel(draft, part, at),
      diameter,
      ...(depth === undefined ? {} : { depth }),
      ...(middle.length > 0 ? { middle } : {}),
    });
    bores.add(made);
  }
}

/** The measures of its panel that a row stands half way along: its holes are marked from that middle to both sides. */
function runsHalved(
  draft: Draft,
  record: Row,
  part: DraftPart,
  about: TracedBox,
  axis: Axis,
  across: Axis,
): readonly ('length' | 'width')[] {
  const l = draft.ledger;
  const spread = (record.count ?? 1) > 1 && record.apart === undefined;
  return (['length', 'width'] as const).filter((run) => {
    const k = axisOf(part.place[run]).axis;
    if (
      (k !== across && (k !== axis || spread)) ||
      FROM_SIDES[k].some((field) => record[field] !== undefined)
    )
      return false;
    const doubled = (box: TracedBox) => l.ticks(box.min[k]) + l.ticks(box.max[k]);
    // An odd number of ticks has its half rounded.
    return Math.abs(doubled(about) - doubled(part.box)) <= 1;
  });
}

/** A stretch of one side, as low and as high as that of the other. */
function atHeightOf({ min, max }: TracedBox, like: TracedBox): TracedBox {
  return { min: [min[0], min[1], like.min[2]], max: [max[0], max[1], like.max[2]] };
}

const LOOKS: Readonly<Record<NonNullable<Row['face']>, Direction>> = {
  left: '-x',
  right: '+x',
  front: '-y',
  back: '+y',
  below: '-z',
  above: '+z',
};

/** The face that holes are bored from: the show face where they go through. */
function sideOf(draft: Draft, record: Row, part: DraftPart, mirrored: boolean): Side | undefined {
  if (record.face === undefined) return 'show';
  const asked = LOOKS[record.face];
  const turned = mirrored && asked[1] === 'x';
  const side = sideLooking(part.place, turned ? (asked === '+x' ? '-x' : '+x') : asked);
  if (side === 'show' || side === 'under') return side;
  draft.stop(
    'holes.wrong-way',
    record,
    'face',
    `The ${part.name} has an edge, no face, that looks ${record.face === 'back' || record.face === 'front' ? `to the ${record.face}` : record.face}.`,
    { says: 'Name one of its two faces.' },
  );
  return undefined;
}

/** The way a row runs on a panel: as asked, or else across, or backward on what stands like a side. */
function rowAxis(draft: Draft, record: Row, part: DraftPart): Axis | undefined {
  const through = axisOf(part.place.thickness).axis;
  const axis = record.lay === undefined ? (through === 0 ? 1 : 0) : AXIS[record.lay];
  if (axis !== through || (record.count ?? 1) === 1) return axis === through ? (through === 0 ? 1 : 0) : axis;
  draft.stop(
    'holes.wrong-way',
    record,
    'lay',
    `A row through the thickness of the ${part.name} can’t be bored.`,
    { says: 'Let it run another way: “across”, “up” or “back”.' },
  );
  return undefined;
}

const AXIS = { across: 0, back: 1, up: 2 } as const;

/** Middles along the row, the lowest first. */
function placesAlong(
  draft: Draft,
  record: Row,
  region: TracedBox,
  axis: Axis,
  mirrored: boolean,
  about: TracedBox,
): readonly Traced[] {
  const l = draft.ledger;
  const count = record.count ?? 1;
  const [low, high] = sidesAlong(axis, mirrored);
  const [from, to] = [record[low], record[high]].map((t) => t !== undefined);
  if (count === 1) return [middleAlong(draft, record, region, axis, mirrored, about)];
  const [min, max] = [region.min[axis], region.max[axis]];
  if (record.apart !== undefined) {
    const apart = draft.field(record, 'apart');
    const whole = l.times('from the first hole to the last', apart, count - 1);
    const middle = middleAlong(draft, record, region, axis, mirrored, about);
    const toMiddle = record.measured === 'middle';
    const first =
      from && !toMiddle
        ? middle
        : to && !toMiddle
          ? l.less('middle of the first hole', middle, whole)
          : l.less('middle of the first hole', middle, l.ratio('half of the row', whole, SETTING_OUT.half));
    return Array.from({ length: count }, (_, i) =>
      i === 0 ? first : l.sum('middle of the next hole', first, l.times('as far apart', apart, i)),
    );
  }
  // Equally spaced: between the first and the last where both are placed, else between both ends, as shelves are.
  const placed = from && to;
  const first = placed ? l.sum('middle of the first hole', min, draft.field(record, low)) : min;
  const last = placed ? l.less('middle of the last hole', max, draft.field(record, high)) : max;
  const way = l.less(placed ? 'from the first hole to the last' : 'from side to side', last, first);
  const steps = Array.from({ length: placed ? count - 1 : count + 1 }, () => 1);
  const places: Traced[] = placed ? [first] : [];
  let at = first;
  for (const i of steps.keys()) {
    at = l.sum('middle of the next hole', at, l.share('an equal share', way, steps, i));
    if (places.length < count) places.push(at);
  }
  return places;
}
