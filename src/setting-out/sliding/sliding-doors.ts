import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT, SLIDING } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Hangable } from '../doors/doors.ts';
import { leftLarger } from '../doors/left-larger.ts';
import { lackToSwingIn } from '../doors/swing-in.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { barredBy } from '../handles/barred-by.ts';
import { clearOfLaterParts } from '../holes/panel-holes.ts';
import type { Bores } from '../joints/bores.ts';
import { ordinal } from '../spaces/openings.ts';
import { closableAtOnce } from './closable.ts';
import { fingerHole } from './finger-hole.ts';
import { leastAfter, pushedTogether, type Row } from './passing.ts';
import { type Bounds, boundsOf } from './sliding-bounds.ts';
import { cutGrooves } from './sliding-grooves.ts';
import { heightsOf, type SlidingHeights } from './sliding-heights.ts';
import { frontOfDoor, type Tracks, tracksOf } from './sliding-tracks.ts';

type SlidingRecord = RecordOf<'sliding-doors'>;

/** Makes the sliding doors of a case, and the grooves that they run in. */
export function slidingDoors(
  draft: Draft,
  bores: Bores,
  parts: Pick<Hangable, 'frame' | 'closed'>,
  top: DraftPart | undefined,
): void {
  for (const record of parts.frame.sliding) {
    const bounds = boundsOf(draft, parts.closed, record, top);
    const heights = bounds && heightsOf(draft, record, bounds);
    if (!bounds || !heights) continue;
    const tracks = tracksOf(draft, parts.frame, record);
    if (!tracksHold(draft, record, tracks)) continue;
    const { frame } = parts;
    const { left, right, start, end } = bounds;
    const row = { record, tracks, left, right, start, end, front: frame.panelFront };
    const cut =
      cutGrooves(draft, bores, { ...row, panel: bounds.below, looks: '+z', depth: heights.lower }) &&
      cutGrooves(draft, bores, { ...row, panel: bounds.above, looks: '-z', depth: heights.upper });
    if (cut) makeDoors(draft, frame, record, bounds, heights, tracks);
  }
}

function tracksHold(draft: Draft, record: SlidingRecord, tracks: Tracks): boolean {
  const l = draft.ledger;
  if (!draft.isSome(tracks.tongue) || !draft.isSome(tracks.gap)) {
    noRoom(draft, record);
    return false;
  }
  if (l.ticks(tracks.web) >= l.ticks(l.row(SLIDING.web))) return true;
  draft.stop(
    'sliding.web-thin',
    record,
    'gap',
    `Between the grooves of “${record.id}” only ${mm(draft, tracks.web)} mm of wood would be left.`,
    {
      says: 'Leave “gap” out, and it will be as wide as the wood between the grooves needs; or let the doors run on thinner tongues.',
    },
  );
  return false;
}

function makeDoors(
  draft: Draft,
  frame: CaseFrame,
  record: SlidingRecord,
  bounds: Bounds,
  heights: SlidingHeights,
  tracks: Tracks,
): void {
  const l = draft.ledger;
  const count = record.count ?? 2;
  const overlap = overlapOf(draft, record, bounds);
  const width = widthOf(draft, record, bounds, count, overlap);
  const trackOf = Array.from({ length: count }, (_, i) => i % tracks.count);
  const inSight = trackOf.map((_, i): 'left' | 'right' => (2 * i < count - 1 ? 'left' : 'right'));
  const barred = inSight.map((edge) => barredBy(draft, record, edge, width, tracks.gap, overlap));
  const row: Row = { width, trackOf, barred };
  const most = Math.ceil(count / tracks.count);
  const opens = l.less(
    'what can be opened at once',
    bounds.width,
    barred.some((b) => b)
      ? pushedTogether(draft, row)
      : l.times('doors that stand side by side', width, most),
  );
  if (!draft.isSome(width) || !draft.isSome(opens)) {
    noRoom(draft, record);
    return;
  }
  if (!swingsIn(draft, frame, record, bounds, heights, tracks)) return;
  const closable = closableOf(draft, record, bounds, row);
  if (!closable) return;
  const lot = draft.lot(record.board);
  const places = trackOf.map((_, i) => placeOf(draft, record, bounds, width, i, count));
  if (!clearOfHandles(draft, record, row, places)) return;
  const made = trackOf.map((track, i) => {
    const part = draft.panel({
      record: record.id,
      role: `door:${i + 1}`,
      name: `${ordinal(i + 1)} sliding door of ${record.over[0]}`,
      family: 'door',
      lot,
      at: [
        places[i]!,
        l.sum('front of the door', frame.panelFront, frontOfDoor(draft, tracks, track)),
        l.less('lower edge of the door, on the floor of its groove', bounds.floor, heights.lower),
      ],
      size: [width, tracks.door, heights.door],
      length: '+z',
      // The show face looks to the front.
      width: '-x',
      between: true,
      ...leftLarger(draft, width, heights.door, tracks.door),
    });
    fingerHole(draft, record, part, inSight[i]!);
    if (tracks.rabbet !== undefined) tongues(draft, part, tracks.rabbet, heights);
    return {
      part,
      leaf: {
        part: part.id,
        track,
        order: i,
        inSight: inSight[i]!,
        ...(barred[i] && track > 0 ? { bars: true as const } : {}),
      },
    };
  });
  clearOfLaterParts(draft, asFarAsTheyGo(made.map((m) => m.part)));
  const leaves = made.map((m) => m.leaf);
  draft.sliding.push({
    record: record.id,
    leaves: leaves.sort((a, b) => a.track - b.track || a.order - b.order),
    tracks: tracks.count,
    below: bounds.below.id,
    above: bounds.above.id,
    left: bounds.start.id,
    right: bounds.end.id,
    opening: { width: bounds.width, height: bounds.height },
    groove: { width: tracks.groove, upper: heights.upper, lower: heights.lower },
    play: tracks.play,
    tongue: tracks.tongue,
    engagement: heights.engagement,
    lift: heights.lift,
    spare: heights.spare,
    gap: tracks.gap,
    overlap,
    opens,
    closes: record.closes ?? 'all',
    closable,
  });
}

/** Each door over its whole way: from where the first stands to where the last does. */
function asFarAsTheyGo(doors: readonly DraftPart[]): readonly Pick<DraftPart, 'name' | 'box'>[] {
  const [first, last] = [doors[0]!.box, doors.at(-1)!.box];
  return doors.map(({ name, box: { min, max } }) => ({
    name,
    box: { min: [first.min[0], min[1], min[2]], max: [last.max[0], max[1], max[2]] },
  }));
}

/** Rabbets behind the upper and lower edge leave the tongues that run; their shoulders stay clear of the wood. */
function tongues(draft: Draft, part: DraftPart, depth: Traced, heights: SlidingHeights): void {
  const l = draft.ledger;
  const clear = l.row(SLIDING.shoulder);
  for (const [edge, groove] of [
    ['start', heights.lower],
    ['end', heights.upper],
  ] as const)
    part.features.push({
      kind: 'rabbet',
      id: `${part.id}#tongue:${edge}`,
      purpose: 'for the tongue that runs in the groove',
      face: 'under',
      edge,
      width: l.round(
        'as fine as the router is set',
        l.sum('as deep as the groove, and clear of its edge', groove, clear),
        draft.stepOf('router'),
        'up',
      ),
      depth,
      from: draft.nothing,
      to: part.width,
    });
}

/** How far doors lap: as asked; by the trade; or to the middle of what parts their bays, where each closes one. */
function overlapOf(draft: Draft, record: SlidingRecord, bounds: Bounds): Traced {
  const l = draft.ledger;
  if (record.overlap !== undefined) return draft.field(record, 'overlap');
  if (record.closes !== 'each') return l.row(SLIDING.overlap);
  const between = bounds.bays.slice(1).map((bay) => bay.left.thickness);
  return l.ratio(
    'to the middle of what parts the openings',
    l.greatest('thickest of them', ...between),
    SETTING_OUT.half,
  );
}

function widthOf(
  draft: Draft,
  record: SlidingRecord,
  bounds: Bounds,
  count: number,
  overlap: Traced,
): Traced {
  const l = draft.ledger;
  if (record.closes === 'each')
    return l.sum(
      'width of a door: the widest opening, and the lap on both sides',
      l.greatest('widest opening', ...bounds.bays.map((b) => b.size[0])),
      overlap,
      overlap,
    );
  const all = l.sum(
    'all doors together: the opening and every lap',
    bounds.width,
    l.times('all laps', overlap, count - 1),
  );
  const even = Array.from({ length: count }, () => 1);
  return l.share('width of a door: an equal share', all, even, 0);
}

/** Where the left edge of a door is drawn: doors that close everything, closed; else each before a bay of its own. */
function placeOf(
  draft: Draft,
  record: SlidingRecord,
  bounds: Bounds,
  width: Traced,
  i: number,
  count: number,
): Traced {
  const l = draft.ledger;
  const free = l.less('how far a door travels', bounds.width, width);
  if (record.closes === 'each') {
    const bay = bounds.bays[Math.round((i * (bounds.bays.length - 1)) / (count - 1))]!;
    const lap = l.ratio('half of what it is wider', l.less('wider', width, bay.size[0]), SETTING_OUT.half);
    const before = l.less('from the left end to its opening', bay.at[0], bounds.left);
    const at = l.ticks(before) < l.ticks(lap) ? draft.nothing : l.less('where it laps alike', before, lap);
    return l.sum('left edge of the door', bounds.left, l.least('not beyond the right end', at, free));
  }
  const steps = Array.from({ length: count - 1 }, () => 1);
  const before = steps.slice(0, i).map((_, k) => l.share('an equal step to the next door', free, steps, k));
  return before.length === 0 ? bounds.left : l.sum('left edge of the door', bounds.left, ...before);
}

/** The openings that can be closed at once; undefined where some can't, which a stop says. */
function closableOf(
  draft: Draft,
  record: SlidingRecord,
  bounds: Bounds,
  row: Row,
): readonly (readonly string[])[] | undefined {
  if (record.closes !== 'each') return [record.over];
  const l = draft.ledger;
  const stretch = (from: Traced, size: Traced) => [l.ticks(from), l.ticks(from) + l.ticks(size)] as const;
  const { can, cannot } = closableAtOnce(
    bounds.bays.map((b) => stretch(b.at[0], b.size[0])),
    stretch(bounds.left, bounds.width),
    l.ticks(row.width),
    row.trackOf.length,
    (earlier, later) => {
      const after = leastAfter(draft, row, earlier, later);
      return after === undefined ? undefined : l.ticks(after);
    },
  );
  const names = (choice: readonly number[]) => choice.map((k) => bounds.bays[k]!.record.id);
  if (cannot === undefined) return can.map(names);
  draft.stop(
    'sliding.cannot-close',
    record,
    'over',
    `The doors of “${record.id}” can’t close ${names(cannot).join(', ')} at once.`,
    { says: 'Make the openings alike, the laps smaller, or have one track more.' },
  );
  return undefined;
}

/** Whether the doors, as they are drawn, stand clear of what bars those before them. */
function clearOfHandles(draft: Draft, record: SlidingRecord, row: Row, places: readonly Traced[]): boolean {
  const l = draft.ledger;
  const met = places.some((at, later) =>
    places.slice(0, later).some((before, earlier) => {
      // Doors of one track are looked after elsewhere.
      if (row.trackOf[earlier] === row.trackOf[later]) return false;
      const after = leastAfter(draft, row, earlier, later);
      return after !== undefined && l.ticks(at) - l.ticks(before) < l.ticks(after);
    }),
  );
  if (!met) return true;
  draft.stop(
    'sliding.handle-met',
    record,
    'overlap',
    `Closed, a door of “${record.id}” would stand over the handle of one behind it.`,
    { says: 'Let the doors lap less, place the handles further from where they lap, or make them narrower.' },
  );
  return false;
}

function swingsIn(
  draft: Draft,
  frame: CaseFrame,
  record: SlidingRecord,
  bounds: Bounds,
  heights: SlidingHeights,
  tracks: Tracks,
): boolean {
  const l = draft.ledger;
  const inMm = (t: Traced) => toMm(l.ticks(t));
  const far = l.ticks(frame.edgingThickness) + l.ticks(tracks.walls.at(-1)!) + l.ticks(tracks.groove);
  const lack = lackToSwingIn({
    door: inMm(heights.door),
    thick: inMm(tracks.tongue),
    clear: inMm(bounds.height),
    upper: inMm(heights.upper),
    play: inMm(tracks.play),
    reach: toMm(far as never),
  });
  if (lack <= 0) return true;
  draft.stop(
    'sliding.cannot-swing-in',
    record,
    'tongue',
    `Doors as low as those of “${record.id}” jam in their upper groove before they stand upright.`,
    { says: 'Let them run on thinner tongues, make both grooves shallower, or the opening higher.' },
  );
  return false;
}

function noRoom(draft: Draft, record: SlidingRecord): void {
  draft.stop('doors.no-room', record, 'over', `The doors of “${record.id}” find no room in their opening.`, {
    says: 'Make the opening larger, or have fewer doors.',
  });
}

function mm(draft: Draft, t: Traced): string {
  return String(Math.round(toMm(draft.ledger.ticks(t)) * 10) / 10);
}
