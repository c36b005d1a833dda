import type { RecordOf } from '../../job/index.ts';
import { DOORS, DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import { overEdges } from '../doors/doors.ts';
import type { Draft } from '../draft.ts';
import { type Extent, edgeFront, edgesOf, edgingLeavesNothing, insideEdges } from '../edging/edged-front.ts';
import type { ClearLoops } from '../fits/clear-loops.ts';
import { fitsOfDrawer } from '../fits/drawer-fits.ts';
import type { Bores } from '../joints/bores.ts';
import type { Space } from '../spaces/openings.ts';
import type { Carriage } from './carriage.ts';
import { chooseCentre } from './centre-choice.ts';
import { centreRunner } from './centre-runner.ts';
import type { Drawer } from './drawer.ts';
import { drawerBox } from './drawer-box.ts';
import { type FrontCover, type FrontSpan, frontSpans } from './drawer-fronts.ts';
import { joinDrawer } from './drawer-joints.ts';
import { type ChosenRunner, chooseRunner } from './runner-choice.ts';
import { runnerLine } from './runner-screws.ts';
import { chooseWooden } from './wooden-choice.ts';
import { type WoodenSpec, woodenRunners } from './wooden-runners.ts';

/** What drawers are made in. */
export interface DrawerPlace {
  readonly frame: CaseFrame;
  readonly panels: CasePanels;
  readonly loops: ClearLoops;
}

/** The drawers that fill an opening, clear of all that is bored already. */
export function drawers(draft: Draft, bores: Bores, place: DrawerPlace, space: Space): void {
  const record = draft.tree.childOf(space.record.id, 'drawers');
  if (!record) return;
  const l = draft.ledger;
  const gap =
    record.gap === undefined
      ? l.row(record.hang === 'inset' ? DRAWERS.insetGap : DRAWERS.overlayGap)
      : draft.field(record, 'gap');
  const thickness = draft.thickness(draft.lot(record.frontBoard));
  const cover = coverOf(draft, place, space, record, gap, thickness);
  if (!cover) return;
  const back = l.sum('back of the fronts', cover.front, thickness);
  const behind = l.less(
    'depth behind the fronts',
    l.sum('back of the opening', space.at[1], space.size[1]),
    back,
  );
  const carriage =
    record.carriedBy === 'wooden-runners'
      ? chooseWooden(draft, record, behind)
      : record.carriedBy === 'centre-runner'
        ? chooseCentre(draft, record, behind, space.size[0])
        : onRunners(draft, record, behind);
  if (!carriage) return;
  if (record.runner !== undefined && carriage.by.kind !== 'bought') unusedRunner(draft, record);
  const spans = frontSpans(draft, record, cover, gap);
  if (!spans) return;
  const width = l.less(
    'width of the box, between its runners',
    space.size[0],
    carriage.beside,
    carriage.beside,
  );
  const board = draft.thickness(draft.lot(record.board));
  if (l.ticks(width) <= 4 * l.ticks(board)) {
    noRoom(draft, record, 'board', `“${space.record.id}” is too narrow for runners and the box of a drawer.`);
    return;
  }
  if (carriage.by.kind === 'bought' && !screwsFit(draft, record, space, carriage.by.runner, board)) return;
  spans.forEach((span, i) => {
    oneDrawer(draft, bores, place, space, record, {
      cover,
      gap,
      carriage,
      back,
      width,
      span,
      n: i + 1,
      count: spans.length,
    });
  });
}

/** What all drawers of an opening have in common, and what is this one's. */
interface One {
  readonly cover: FrontCover;
  readonly gap: Traced;
  readonly carriage: Carriage;
  /** Back of the fronts, where the boxes begin. */
  readonly back: Traced;
  readonly width: Traced;
  readonly span: FrontSpan;
  readonly n: number;
  readonly count: number;
}

function oneDrawer(
  draft: Draft,
  bores: Bores,
  place: DrawerPlace,
  space: Space,
  record: RecordOf<'drawers'>,
  one: One,
): void {
  const l = draft.ledger;
  const { cover, span, carriage, back } = one;
  const upper = l.sum('upper edge of the front', span.lower, span.height);
  const ceiling = l.sum('upper end of the opening', space.at[2], space.size[2]);
  const stands = carriage.by.kind === 'centre';
  const foot = stands
    ? space.at[2]
    : l.sum(
        'lower edge of the box',
        record.hang === 'inset' ? span.lower : l.greatest('inside the opening', span.lower, space.at[2]),
        l.row(DRAWERS.belowBox),
      );
  const head = stands
    ? l.less('upper edge of the box, below what keeps it from tipping', ceiling, l.row(DRAWERS.centreAbove))
    : l.less(
        'upper edge of the box',
        record.hang === 'inset' ? upper : l.least('inside the opening', upper, ceiling),
        l.row(DRAWERS.aboveBox),
      );
  const high = l.round(
    'as fine as the saw is set',
    l.less('height of the box', head, foot),
    draft.stepOf('circular-saw'),
    'down',
  );
  if (stands && l.ticks(high) > l.ticks(carriage.length)) tallOnCentre(draft, record);
  const least = Math.max(l.ticks(l.row(DRAWERS.lowestBox)), l.ticks(carriage.lowest));
  if (l.ticks(high) < least) {
    noRoom(
      draft,
      record,
      record.grade === undefined ? 'count' : 'grade',
      `Box ${one.n} of “${record.id}” would be ${Math.max(0, Math.floor(toMm(l.ticks(high))))} mm high, too low for its runners or to hold anything.`,
    );
    return;
  }
  const which = one.count > 1 ? `drawer ${one.n}` : 'drawer';
  const name = `${which} of ${space.record.id}`;
  const suffix = one.count > 1 ? `:${one.n}` : '';
  const box = drawerBox(draft, {
    record,
    suffix,
    name,
    at: [l.sum('left side of the box, beside its runner', space.at[0], carriage.beside), back, foot],
    size: [one.width, carriage.length, high],
  });
  if (
    [box.front, box.back, box.bottom].some((p) => ![p.length, p.width].every((t) => draft.isSome(t))) ||
    !draft.isSome(box.inside.depth)
  ) {
    noRoom(draft, record, 'board', `Nothing is left inside the ${name}.`);
    return;
  }
  const whole: Extent = {
    at: [cover.left, cover.front, span.lower],
    size: [
      l.less('width of the front', cover.right, cover.left),
      l.less('thickness of the front', back, cover.front),
      span.height,
    ],
  };
  const edges = edgesOf(draft, record.id);
  const inside = insideEdges(draft, edges, whole);
  if (!draft.isSome(inside.size[0]) || !draft.isSome(inside.size[2])) {
    if (edges) edgingLeavesNothing(draft, 'drawers.no-room', edges, `the front of ${name}`);
    else noRoom(draft, record, 'gap', `The gaps leave no board of the front of ${name}.`);
    return;
  }
  const face = draft.panel({
    record: record.id,
    role: `front${suffix}`,
    name: `front of ${name}`,
    family: 'drawer front',
    lot: draft.lot(record.frontBoard),
    ...inside,
    length: '+x',
    // The show face looks to the front.
    width: '+z',
    between: record.hang === 'inset',
  });
  edgeFront(draft, edges, face, whole);
  if (!joinDrawer(draft, bores, { record, name, box, face })) return;
  const carried = carry(draft, bores, { record, suffix, name, box, space, carriage });
  if (!carried) return;
  const loadKg = draft.mass(record.load);
  const drawer = {
    record: record.id,
    name,
    parts: {
      left: box.left.id,
      right: box.right.id,
      front: box.front.id,
      back: box.back.id,
      bottom: box.bottom.id,
      face: face.id,
    },
    joint: box.joint,
    bottomFitting: box.bottomFitting,
    hang: record.hang,
    posts: [space.left.id, space.right.id] as const,
    below: space.below.id,
    gap: one.gap,
    beside: carriage.beside,
    inside: box.inside,
    length: carriage.length,
    ...carried,
    travel: carriage.travel,
    ...(loadKg === undefined ? {} : { loadKg }),
  };
  draft.drawers.push(drawer);
  fitsOfDrawer(draft, { drawer, box, face, space, carriage, single: one.count === 1 }, place.loops);
}

function unusedRunner(draft: Draft, record: RecordOf<'drawers'>): void {
  const by = record.carriedBy === 'centre-runner' ? 'a centre runner' : 'wooden runners';
  draft.snags.push({
    code: 'drawers.runner-unused',
    level: 'note',
    where: { record: record.id, path: `design/records/${record.id}/runner` },
    sentence: `The runner “${record.runner}” of “${record.id}” is not used: its drawers run on ${by}.`,
    cures: [{ says: 'Take “runner” out, or leave “carriedBy” out.' }],
  });
}

function tallOnCentre(draft: Draft, record: RecordOf<'drawers'>): void {
  draft.snags.push({
    code: 'drawers.centre-tall',
    level: 'mind',
    where: { record: record.id, path: `design/records/${record.id}/carriedBy` },
    sentence: `The box of “${record.id}” is higher than it is deep: on a centre runner it tips and jams.`,
    rule: {
      says: 'a drawer that is guided below alone is deeper than it is high',
      source: 'common practice',
      confirmed: false,
    },
    cures: [
      { says: 'Divide the opening, so that the drawer is lower.' },
      {
        says: 'Let the drawer run on the uprights.',
        edits: [{ record: record.id, field: 'carriedBy', value: 'wooden-runners' }],
      },
    ],
  });
}

/** Bought runners as what carries the drawers of an opening. */
function onRunners(draft: Draft, record: RecordOf<'drawers'>, depth: Traced): Carriage | undefined {
  const runner = chooseRunner(draft, record, depth);
  return (
    runner && {
      length: runner.length,
      beside: inItsMiddle(draft, runner.thickness),
      lowest: runner.height,
      travel: runner.travel,
      by: { kind: 'bought', runner },
    }
  );
}

/**
 * Room for a runner in the middle of what it puts up with: a box that was drawn as wide as it may be would be too wide with
 * the least error.
 */
function inItsMiddle(draft: Draft, thickness: Traced): Traced {
  const l = draft.ledger;
  const half = l.ratio(
    'half of what a runner may have beside it, as errors go both ways',
    l.row(DRAWERS.runnerWider),
    SETTING_OUT.half,
  );
  return l.sum('room for a runner', thickness, half);
}

/** Puts a box on what carries it; undefined where there is no place for that (a stop says so). */
function carry(
  draft: Draft,
  bores: Bores,
  { carriage, ...spec }: Omit<WoodenSpec, 'strips'> & { readonly carriage: Carriage },
): Pick<Drawer, 'runner' | 'wooden' | 'centre'> | undefined {
  if (carriage.by.kind === 'wooden') {
    const wooden = woodenRunners(draft, bores, { strips: carriage.by.strips, ...spec });
    return wooden && { wooden };
  }
  if (carriage.by.kind === 'centre') {
    const centre = centreRunner(draft, bores, { strips: carriage.by.strips, ...spec });
    return centre && { centre };
  }
  const { runner } = carriage.by;
  const line = runnerLine(draft, bores, { runner, ...spec });
  return (
    line && {
      runner: {
        id: runner.runner.id,
        screw: runner.runner.screw,
        screwLength: runner.screwLength,
        screwDiameter: runner.screwDiameter,
        line: line.aboveBox,
        height: line.at,
        thick: runner.thickness,
        caseScrews: runner.caseScrews,
        drawerScrews: runner.drawerScrews,
      },
    }
  );
}

/** Where the fronts stand: inside the opening, or before the case's edges. */
function coverOf(
  draft: Draft,
  { frame, panels }: DrawerPlace,
  space: Space,
  record: RecordOf<'drawers'>,
  gap: Traced,
  thickness: Traced,
): FrontCover | undefined {
  const l = draft.ledger;
  // Behind an inset door the opening begins further back, and so do the fronts.
  const closed = l.ticks(space.at[1]) !== l.ticks(frame.panelFront);
  if (record.hang === 'inset') {
    const cover = {
      left: l.sum('left edge of the fronts', space.at[0], gap),
      right: l.less(
        'right edge of the fronts',
        l.sum('right end of the opening', space.at[0], space.size[0]),
        gap,
      ),
      lower: l.sum('lower edge of the lowest front', space.at[2], gap),
      upper: l.less(
        'upper edge of the highest front',
        l.sum('upper end of the opening', space.at[2], space.size[2]),
        gap,
      ),
      front: closed ? space.at[1] : frame.front,
    };
    if (l.ticks(cover.right) - l.ticks(cover.left) > 0 && l.ticks(cover.upper) - l.ticks(cover.lower) > 0)
      return cover;
    noRoom(draft, record, 'gap', `The gaps round the fronts of “${record.id}” leave nothing of them.`);
    return undefined;
  }
  if (closed) {
    noRoom(draft, record, 'hang', `The fronts of “${record.id}” would stand in the way of a door.`);
    return undefined;
  }
  const edges = overEdges(draft, { frame, panels }, space, space, gap);
  const back = l.less('back of the fronts', frame.front, l.row(DOORS.standOff));
  return {
    left: edges.left,
    right: edges.right,
    lower: edges.lower,
    upper: edges.upper,
    front: l.less('front of the fronts', back, thickness),
  };
}

/** The screws of runners stay in the wood of box and uprights. */
function screwsFit(
  draft: Draft,
  record: RecordOf<'drawers'>,
  space: Space,
  runner: ChosenRunner,
  board: Traced,
): boolean {
  const l = draft.ledger;
  const thinnest = Math.min(l.ticks(board), l.ticks(space.left.thickness), l.ticks(space.right.thickness));
  const far = l.ticks(l.row(SETTING_OUT.farFace));
  if (l.ticks(runner.screwLength) + far <= thinnest) return true;
  draft.stop(
    'drawers.screw-too-long',
    record,
    'runner',
    `The screws of “${runner.runner.id}” come too near the far face of the drawer’s side or of an upright.`,
    { says: 'Fix the runners with shorter screws, or make the box of a thicker board.' },
  );
  return false;
}

function noRoom(draft: Draft, record: RecordOf<'drawers'>, field: string, sentence: string): void {
  draft.stop('drawers.no-room', record, field, sentence, {
    says: 'Make the opening larger, or have fewer drawers.',
  });
}
