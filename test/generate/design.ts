import fc from 'fast-check';
import type { RecordOf } from '../../src/job/index.ts';
import { ROW_IDS } from '../../src/materials/index.ts';
import { bases } from './bases.ts';
import { withBayBacks } from './bay-backs.ts';
import { type CableWish, cableRecords, cableWishes } from './cables.ts';
import { type ChestWish, chestOf, chestWishes } from './chests.ts';
import { type DoorWish, doorRecords, doorWish } from './door-wish.ts';
import { carriedIn, drawerWishes, stripOf } from './drawers.ts';
import { type Edged, edgingOfCase, edgingRecord } from './edged-fronts.ts';
import { type HandleWish, handleRecords, handleWishes } from './handles.ts';
import { hiddenWishes, withHiddenSpace } from './hidden-spaces.ts';
import { type HoleWish, holeRecords, holeWishes } from './hole-rows.ts';
import { hung } from './hung.ts';
import { looseShelves } from './loose-shelves.ts';
import { optional, withoutAbsent } from './optional.ts';
import { severalCases } from './several.ts';
import { shop } from './shop.ts';
import { thingWishes, withThings } from './things-held.ts';
import { roomForButtons, topWishes } from './tops.ts';
import { trayDividers, withoutTraysUnderTop } from './tray-dividers.ts';
import { type Field, length, type Typed, type Units } from './typed-length.ts';

/** A generated job, as a file would hold it, and the overall size it asks for in ticks of 1/3200 mm. */
export interface GeneratedJob {
  readonly document: {
    readonly version: 1;
    readonly design: unknown;
    readonly shop: unknown;
    readonly work: object;
  };
  readonly overall: { readonly width: number; readonly height: number; readonly depth: number };
  /** What openings of a size by formula must come to, in ticks, by dimension. */
  readonly asked: Readonly<Record<string, number>>;
}

/** What every generated design calls `gap`. */
const GAP: Readonly<Record<Units, Typed>> = {
  mm: { text: '3 mm', ticks: 9600 },
  in: { text: '1/8"', ticks: 10160 },
};

/** The same length by a formula. */
function byFormula(units: Units, of: fc.Arbitrary<Typed>): fc.Arbitrary<Typed & { readonly formula: true }> {
  const grid = units === 'mm' ? '0.1 mm' : '1/16"';
  return fc
    .tuple(
      of,
      fc.constantFrom<(t: string) => string>(
        (t) => `${t} + gap - gap`,
        (t) => `3 * (${t}) / 3`,
        (t) => `max(${t}, gap / 7)`,
        (t) => `max(${t}, hall.through / 1000)`,
        (t) => `nearest(${t} + gap / 1000, ${grid})`,
        (t) => `min(${t}, width + height)`,
        (t) => `min(${t}, doorway.through + doorway.height)`,
      ),
    )
    .map(([t, write]) => ({ text: write(t.text), ticks: t.ticks, formula: true }));
}

/** What fills an opening: shelves, further openings, or nothing. */
type Filling =
  | { readonly fill: 'nothing' }
  | { readonly fill: 'shelves'; readonly shelf: Field }
  | { readonly fill: 'pins'; readonly pins: Field }
  | { readonly fill: 'drawers'; readonly drawers: Field }
  | { readonly fill: 'trays'; readonly trays: Field }
  | {
      readonly fill: 'split';
      readonly split: 'across' | 'down';
      readonly openings: readonly { readonly size?: string | Typed; readonly filling: Filling }[];
      /** Records for the dividers: their boards, in order; none where they come with the split. */
      readonly dividers?: readonly Field[];
    };

/** An opening narrower than this (mm) isn't split further, nor given shelves that no pocket fits. */
const NARROW = 260;
const LOW = 120;

/** What may fill an opening of about a given size (mm), split at most `levels` deep. */
function filling(units: Units, wide: number, high: number, levels: number): fc.Arbitrary<Filling> {
  const nothing: fc.Arbitrary<Filling> = fc.constant({ fill: 'nothing' });
  const choices: fc.WeightedArbitrary<Filling>[] = [{ weight: 1, arbitrary: nothing }];
  const most = Math.floor(high / LOW) - 1;
  if (most >= 1 && wide > 150)
    choices.push(
      { weight: 2, arbitrary: shelves(units, high, Math.min(most, 5)) },
      { weight: 1, arbitrary: trayDividers(units, Math.min(6, Math.floor(wide / 60))) },
      { weight: 1, arbitrary: looseShelves(units, Math.min(most, 5)) },
      { weight: 1, arbitrary: drawerWishes(units, Math.max(1, Math.min(4, Math.floor(high / 170)))) },
    );
  if (levels > 0) {
    const across = Math.min(4, Math.floor(wide / NARROW));
    const down = Math.min(4, Math.floor(high / NARROW));
    if (across >= 2)
      choices.push({ weight: 2, arbitrary: split(units, 'across', across, wide, high, levels) });
    if (down >= 2) choices.push({ weight: 2, arbitrary: split(units, 'down', down, wide, high, levels) });
  }
  return fc.oneof({ withCrossShrink: true }, ...choices);
}

function shelves(units: Units, high: number, most: number): fc.Arbitrary<Filling> {
  const common = {
    setback: optional(
      fc.oneof(
        { weight: 3, arbitrary: length(units, 0, 30).map((t) => t.text) },
        { weight: 1, arbitrary: fc.constantFrom('gap', 'gap * 2 + 1', 'up(gap, 5 mm)', 'depth / 20') },
      ),
    ),
    load: optional(fc.constantFrom('20 kg', '35 kg', '90 lb')),
    board: optional(fc.constantFrom('board', 'other')),
  };
  const spaced = fc.record({ ...common, count: optional(fc.integer({ min: 1, max: most })) });
  const rows = fc.record({
    ...common,
    rowOf: fc.constantFrom(
      ...(high > 420 ? ROW_IDS : ROW_IDS.filter((id) => id === 'compact-discs' || id === 'paperbacks')),
    ),
  });
  const placed = fc.record({ ...common, at: length(units, 60, Math.max(61, high - 60)).map((t) => t.text) });
  return fc.oneof(spaced, placed, ...(high > 280 ? [rows] : [])).map((shelf) => ({ fill: 'shelves', shelf }));
}

function split(
  units: Units,
  direction: 'across' | 'down',
  most: number,
  wide: number,
  high: number,
  levels: number,
): fc.Arbitrary<Filling> {
  return fc.integer({ min: 2, max: most }).chain((count) => {
    const each = (direction === 'across' ? wide : high) / count - 20;
    const [w, h] = direction === 'across' ? [each, high] : [wide, each];
    const shared = fc.constantFrom(undefined, 'equal', '1 share', '2 shares', '1.5 shares');
    const size = length(units, 0.6 * each, each);
    const fixed = fc.oneof(
      size.map((t) => t.text),
      byFormula(units, size),
    );
    const opening = (size: fc.Arbitrary<string | Typed | undefined>) =>
      fc.record({ size, filling: filling(units, w * 0.8, h * 0.8, levels - 1) });
    return fc
      .record({
        fill: fc.constant('split' as const),
        split: fc.constant(direction),
        openings: fc
          .tuple(
            opening(shared),
            fc.array(opening(fc.oneof(shared, fixed)), { minLength: count - 1, maxLength: count - 1 }),
          )
          .map(([first, rest]) => [first, ...rest].map(withoutAbsent)),
        dividers: optional(
          fc.array(fc.record({ board: optional(fc.constantFrom('board', 'other')) }).map(withoutAbsent), {
            minLength: count - 1,
            maxLength: count - 1,
          }),
        ),
      })
      .map(withoutAbsent) as fc.Arbitrary<Filling>;
  });
}

/** The records of a design from its wishes, each opening's filling under its own id. */
function records(
  wish: Wish,
  units: Units,
): { readonly list: readonly Field[]; readonly asked: Record<string, number> } {
  const { overall, back } = wish;
  // A shallow case leaves no room between legs for aprons and their pockets.
  const base = wish.base?.form === 'legs' && overall.depth.ticks < 340 * 3200 ? undefined : wish.base;
  // Sides that run to the floor have no mitres, and mitred panels no edging.
  const mitred = wish.joints === 'mitre' && base?.form !== 'toe-kick';
  const joints = wish.joints === 'mitre' && !mitred ? undefined : wish.joints;
  const edged = wish.edged && !mitred;
  // Mitred panels fold round what is inside, and no top goes in between.
  const top = mitred && wish.top?.fit === 'inset' ? undefined : wish.top;
  const inside =
    wish.doors && 'closes' in wish.doors && wish.doors.closes === 'each' ? sideBySide(wish) : wish.inside;
  const list: Field[] = [
    pieceRecord(overall),
    {
      id: 'case',
      kind: 'case',
      parent: 'piece',
      board: 'board',
      ...(joints === undefined ? {} : { joints }),
      ...(joints === 'mitre' && wish.inMitres === 'biscuits' ? { inMitres: 'biscuits' } : {}),
      ...(joints === 'mitre' && wish.inMitres === 'spline'
        ? { inMitres: 'spline', splineBoard: 'spline' }
        : {}),
      ...(wish.heads === undefined ? {} : { heads: wish.heads }),
      ...(wish.bottom === undefined || base?.form === 'toe-kick' || mitred ? {} : { bottom: wish.bottom }),
      ...(wish.lid === undefined || top || mitred ? {} : { lid: wish.lid }),
      ...(wish.oneBlank === undefined ? {} : { oneBlank: wish.oneBlank }),
    },
    { id: 'gap', kind: 'size', value: GAP[units].text },
  ];
  const asked: Record<string, number> = {};
  const fill = (id: string, filled: Filling) => {
    if (filled.fill === 'shelves')
      list.push({ id: `${id}.shelf`, kind: 'shelf', parent: id, ...withoutAbsent(filled.shelf) });
    if (filled.fill === 'drawers') {
      const { edged, ...drawers } = stripOf(id, carriedIn(overall.depth, filled.drawers));
      list.push({ id: `${id}.drawers`, kind: 'drawers', parent: id, ...drawers });
      if (edged) list.push(edgingRecord(`${id}.drawers`, edged as Edged));
    }
    if (filled.fill === 'trays') list.push({ id: `${id}.trays`, kind: 'trays', parent: id, ...filled.trays });
    if (filled.fill === 'pins') {
      const { edged, ...pins } = filled.pins;
      list.push({ id: `${id}.pins`, kind: 'pins', parent: id, ...pins });
      if (edged) list.push({ id: `${id}.lip`, kind: 'edging', parent: `${id}.pins`, strip: 'lip' });
    }
    if (filled.fill !== 'split') return;
    filled.openings.forEach((opening, i) => {
      const inner = `${id}.${i + 1}`;
      const { size } = opening;
      if (typeof size === 'object')
        asked[`${inner}.${filled.split === 'across' ? 'width' : 'height'}`] = size.ticks;
      list.push({
        id: inner,
        kind: 'opening',
        parent: id,
        ...(size === undefined ? {} : { size: typeof size === 'object' ? size.text : size }),
        ...(opening.filling.fill === 'split' ? { split: opening.filling.split } : {}),
      });
      fill(inner, opening.filling);
    });
    filled.dividers?.forEach((divider, i) => {
      list.push({ id: `${id}.d${i + 1}`, kind: 'divider', parent: id, ...divider });
    });
  };
  if (inside) {
    const split = inside.fill === 'split' ? { split: inside.split } : {};
    list.push({ id: 'inside', kind: 'opening', parent: 'case', ...split });
    fill('inside', inside);
  }
  if (back) {
    const setIn = back === 'groove' && wish.setIn !== undefined ? { setIn: wish.setIn } : {};
    list.push({ id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: back, ...setIn });
  }
  if (top) list.push({ id: 'top', kind: 'top', parent: 'case', board: 'board', ...withoutAbsent(top) });
  withoutTraysUnderTop(list);
  chestOf(wish.chest, list, overall.height.ticks / 3200);
  if (base) list.push({ id: 'base', kind: 'base', parent: 'case', ...withoutAbsent(base) });
  // Drawers and dividers for trays reach as far back and up as a rail does.
  const full = (r: Field) => r.kind === 'drawers' || r.kind === 'trays';
  if (!base && wish.hung && !list.some(full)) list.splice(0, list.length, ...hung(list, wish.cleated));
  // Fronts before the case leave no place for doors there.
  const fronts = list.some((r) => r.kind === 'drawers' && r.hang === 'overlay');
  const bays = inside?.fill === 'split' ? inside.openings.map((_, i) => `inside.${i + 1}`) : ['inside'];
  if (inside && wish.doors && !fronts && !list.some((r) => r.kind === 'front'))
    list.push(
      ...doorRecords(
        wish.doors,
        bays,
        inside.fill === 'split' && inside.split === 'across',
        overall.height.ticks < 1500 * 3200,
      ),
    );
  // A hole would come out against one of the dividers.
  if (!list.some((r) => r.kind === 'trays')) list.push(...cableRecords(wish.cables, list));
  list.push(...holeRecords(wish.holes, list));
  list.push(...handleRecords(wish.handles, list));
  if (edged && !list.some((r) => r.kind === 'front')) list.push(edgingOfCase(list, wish.ends));
  return { list: wish.bayBacks ? withBayBacks(list, wish.bayBacks) : list, asked };
}

/** An inside for doors that close an opening each: side by side, where there is room for that. */
function sideBySide({ inside, overall }: Wish): Filling | undefined {
  const isSo = inside?.fill === 'split' && inside.split === 'across';
  const bays = Math.min(4, Math.floor(overall.width.ticks / 3200 / NARROW));
  if (isSo || !inside || bays < 2) return inside;
  const opening = { filling: inside.fill === 'split' ? ({ fill: 'nothing' } as const) : inside };
  return { fill: 'split', split: 'across', openings: Array.from({ length: bays }, () => opening) };
}

interface Wish {
  readonly overall: { readonly width: Typed; readonly height: Typed; readonly depth: Typed };
  readonly inside: Filling | undefined;
  readonly joints:
    | 'pocket-screws'
    | 'face-screws'
    | 'rabbet'
    | 'dado'
    | 'stopped-dado'
    | 'tongue'
    | 'dowels'
    | 'biscuits'
    | 'mitre'
    | undefined;
  readonly inMitres: 'biscuits' | 'spline' | undefined;
  readonly bottom: RecordOf<'case'>['bottom'];
  readonly lid: RecordOf<'case'>['lid'];
  readonly heads: 'countersunk' | 'plugged' | undefined;
  readonly back: 'rabbet' | 'groove' | 'applied' | undefined;
  readonly setIn: string | undefined;
  readonly bayBacks: 'alike' | 'mixed' | undefined;
  readonly top: Field | undefined;
  readonly base: Field | undefined;
  readonly edged: boolean;
  readonly ends: boolean;
  readonly hung: boolean;
  readonly cleated: boolean;
  readonly cables: readonly CableWish[];
  readonly holes: HoleWish | undefined;
  readonly chest: ChestWish | undefined;
  readonly handles: HandleWish | undefined;
  readonly doors: DoorWish | undefined;
  readonly oneBlank: 'sides' | 'dividers' | 'sides-and-dividers' | undefined;
}

/** Inside a case of these sizes, whatever its top and base are. */
function inside(units: Units, overall: Wish['overall']): fc.Arbitrary<Filling | undefined> {
  const [wide, high] = [overall.width.ticks / 3200 - 150, overall.height.ticks / 3200 - 180];
  return fc.option(filling(units, wide, high, 3), { nil: undefined, freq: 20 });
}

function wishes(units: Units): fc.Arbitrary<Wish> {
  return fc
    .record({
      width: length(units, 320, 2400),
      height: length(units, 320, 2200),
      depth: length(units, 180, 650),
    })
    .chain((overall) => wishesOf(units, overall));
}

/** What a case of these sizes may wish. */
function wishesOf(units: Units, overall: Wish['overall']): fc.Arbitrary<Wish> {
  const text = (from: number, to: number) => length(units, from, to).map((t) => t.text);
  return fc.record({
    overall: fc.constant(overall),
    inside: inside(units, overall),
    inMitres: fc.constantFrom(...(['biscuits', 'spline', 'biscuits', 'spline', undefined] as const)),
    joints: optional(
      fc.constantFrom(
        'pocket-screws' as const,
        'face-screws' as const,
        'rabbet' as const,
        'dado' as const,
        'stopped-dado' as const,
        'tongue' as const,
        'dowels' as const,
        'biscuits' as const,
        'mitre' as const,
        'mitre' as const,
      ),
    ),
    bottom: optional(
      fc.constantFrom(...(['between', 'under', 'under', 'under-left', 'under-right'] as const)),
    ),
    lid: fc.constantFrom(...(['between', 'over', 'over', 'over-left', 'over-right', undefined] as const)),
    heads: optional(fc.constantFrom('countersunk' as const, 'plugged' as const)),
    back: optional(fc.constantFrom('rabbet' as const, 'groove' as const, 'applied' as const)),
    setIn: optional(text(6, 20)),
    bayBacks: fc.constantFrom('mixed' as const, 'mixed' as const, 'alike' as const, undefined),
    top: topWishes(text),
    base: optional(bases(text)),
    hung: fc.constantFrom(true, true, false),
    cleated: fc.constantFrom(true, true, true, true, false),
    edged: fc.boolean(),
    ends: fc.boolean(),
    cables: cableWishes(text),
    holes: holeWishes(text),
    chest: chestWishes(text),
    handles: handleWishes(text),
    doors: fc.option(doorWish(text), { nil: undefined, freq: 2 }),
    oneBlank: optional(fc.constantFrom('sides' as const, 'dividers' as const, 'sides-and-dividers' as const)),
  });
}

/** Several cases in a piece. */
function several(units: Units): fc.Arbitrary<Made> {
  return severalCases<Wish>({
    length: (from, to) => length(units, from, to),
    // A lid opens only where nothing stands round it.
    wishes: (sizes) =>
      wishesOf(units, sizes).map((wish) => ({
        ...wish,
        chest: undefined,
        // Ends stand against neighbours, or under them.
        ends: false,
        // In a stack the case below would close the recess of a cleat.
        cleated: false,
        // One upon another they leave no place for the screws from case to case.
        top:
          wish.top?.board === 'planks'
            ? { ...wish.top, board: undefined, moves: undefined, buttons: undefined }
            : wish.top,
        // Outer faces stand against neighbours.
        holes: wish.holes && ['sides', 'top'].includes(wish.holes.into) ? undefined : wish.holes,
      })),
    // Between cases drivers come from inside, where dividers for trays stand.
    records: (wish) => {
      const { list, asked } = records(wish, units);
      return { list: list.filter((r) => r.kind !== 'trays'), asked };
    },
  }).map(({ overall, list, asked }) => ({
    overall,
    asked,
    list: [pieceRecord(overall), { id: 'gap', kind: 'size', value: GAP[units].text }, ...list],
  }));
}

/** A design: its records, and what must come out. */
interface Made {
  readonly overall: Wish['overall'];
  readonly list: readonly Field[];
  readonly asked: Readonly<Record<string, number>>;
}

function pieceRecord(overall: Wish['overall']): Field {
  return {
    id: 'piece',
    kind: 'piece',
    name: 'A piece',
    width: overall.width.text,
    height: overall.height.text,
    depth: overall.depth.text,
  };
}

/** Jobs over the whole of the design language: splits to three levels, shelves, backs, tops, bases, edging, mm and inches. */
export const generatedJobs: fc.Arbitrary<GeneratedJob> = fc.constantFrom<Units>('mm', 'in').chain((units) => {
  const text = (from: number, to: number) => length(units, from, to).map((t) => t.text);
  return fc
    .record({
      made: fc.oneof(
        {
          weight: 7,
          arbitrary: wishes(units).map((wish): Made => ({ overall: wish.overall, ...records(wish, units) })),
        },
        { weight: 2, arbitrary: several(units) },
      ),
      room: optional(
        fc.record({
          wall: optional(fc.constantFrom('studs', 'masonry', 'hollow')),
          floorFall: text(0, 8),
          fallsTo: fc.constantFrom('left', 'right', 'front', 'back'),
        }),
      ),
      hidden: hiddenWishes(text),
      held: thingWishes(text),
      thickness: fc.record({
        board: text(15, 26),
        other: text(15, 26),
        // Shelves, dividers and bases of the other board may be of solid wood.
        wood: fc.constantFrom('birch-plywood', 'ash-white'),
        thin: text(3, 12),
        strip: text(5, 22),
        lip: text(3, 10),
        taped: fc.constantFrom(true, false, false),
      }),
      router: optional(fc.constantFrom('0.1 mm', '1/64 in', '0.5 mm')),
    })
    .map(({ made, room, hidden, held, thickness, router }) => ({
      asked: made.asked,
      document: {
        version: 1,
        design: {
          records: [
            ...roomForButtons(withHiddenSpace(withThings(made.list, held), hidden)),
            ...(room ? [{ id: 'room', kind: 'room', ...withoutAbsent(room) }] : []),
          ],
        },
        shop: shop(units, thickness, router),
        work: {},
      },
      overall: {
        width: made.overall.width.ticks,
        height: made.overall.height.ticks,
        depth: made.overall.depth.ticks,
      },
    }));
});
