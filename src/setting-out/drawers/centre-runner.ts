import type { RecordOf } from '../../job/index.ts';
import { DRAWERS, HOLES } from '../../materials/index.ts';
import { type Traced, ticks } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox, sideLooking } from '../joints/contact.ts';
import { placeTicks, toPiece } from '../place.ts';
import type { Space } from '../spaces/openings.ts';
import type { CentreChoice } from './centre-choice.ts';
import type { CentreRunner } from './drawer.ts';
import type { DrawerBox } from './drawer-box.ts';

/** A box that stands on what is below it, to be guided by a strip under its middle. */
export interface CentreSpec {
  readonly record: RecordOf<'drawers'>;
  readonly suffix: string;
  readonly name: string;
  readonly box: DrawerBox;
  readonly space: Space;
  readonly strips: CentreChoice;
}

/**
 * A strip glued to what is below, from behind the box's front to its back, and one glued to the bottom on either side of
 * it, a slip of card away. Places are such as can be marked.
 */
export function centreRunner(draft: Draft, bores: Bores, spec: CentreSpec): CentreRunner | undefined {
  const l = draft.ledger;
  const { box, space, strips } = spec;
  const step = draft.stepOf('marking');
  const halfOf = (why: string, t: Traced) => l.share(why, t, [1, 1], 0);
  const fromLeft = l.round(
    'as it is marked',
    halfOf(
      'room on either side of the runner',
      l.less('clear width less the runner', space.size[0], strips.wide),
    ),
    step,
    'nearest',
  );
  const x = l.sum('left side of the runner', space.at[0], fromLeft);
  const front = l.sum(
    'front end of the runner, behind the box’s front',
    box.front.box.max[1],
    l.row(DRAWERS.woodAhead),
  );
  const rear = box.back.box.max[1];
  const long = l.less('length of the runner, to the back of the box', rear, front);
  const t = (of: Traced) => l.ticks(of);
  const lies: LiesOn = { min: [t(x), t(front)], max: [t(x) + t(strips.wide), t(rear)] };
  if (overScrews(draft, spec, lies) || overHole(draft, spec, lies)) return undefined;
  keepClear(draft, bores, spec, lies);
  const runner = strip(draft, spec, 'centre-runner', 'centre runner', [x, front, space.at[2]], long, '-x');
  glue(draft, runner, '-z', space.below);
  const under = l.less('lower side of the guides, under the bottom', box.bottom.box.min[2], strips.thick);
  const edge = box.bottom.box.min[0];
  const slip = l.row(DRAWERS.centrePlay);
  const between = l.round(
    'as it is marked, and no less',
    l.sum('the runner and a slip of card on either side', strips.wide, slip, slip),
    step,
    'up',
  );
  const play = l.less('play of the runner between its guides', between, strips.wide);
  // From the left edge of the bottom, on the grid of marks.
  const left = l.round(
    'as it is marked',
    l.less(
      'left side of the left guide, from the bottom’s',
      l.less('runner from the bottom’s left edge', x, edge),
      halfOf('play on one side', play),
      strips.wide,
    ),
    step,
    'nearest',
  );
  const right = l.sum('left side of the right guide, from the bottom’s', left, strips.wide, between);
  const guides = (
    [
      ['left', left],
      ['right', right],
    ] as const
  ).map(([hand, from]) => {
    const at = [l.sum('left side of the guide', edge, from), front, under] as const;
    const guide = strip(draft, spec, `${hand}-guide`, `${hand} guide`, at, long, '+x');
    glue(draft, guide, '+z', box.bottom);
    return guide;
  });
  return {
    runner: runner.id,
    guides: [guides[0]!.id, guides[1]!.id],
    play,
    above: l.less(
      'from the box to what is above it',
      l.sum('upper end of the opening', space.at[2], space.size[2]),
      box.left.box.max[2],
    ),
  };
}

/** What the runner lies on, from the left and from the front of the piece, in ticks. */
interface LiesOn {
  readonly min: readonly [x: number, y: number];
  readonly max: readonly [x: number, y: number];
}

/** Screws that are placed later find the wood under the runner taken. */
function keepClear(
  { ledger }: Draft,
  bores: Bores,
  { space, strips }: CentreSpec,
  { min, max }: LiesOn,
): void {
  const under = ledger.ticks(space.at[2]);
  bores.hollow(space.below.id, {
    min: [...min, under],
    max: [...max, under + ledger.ticks(strips.thick)],
  });
}

/** True where something from `low` to `high`, and so far beside it, lies under the runner. */
function isUnder(
  { min, max }: LiesOn,
  low: readonly number[],
  high: readonly number[],
  beside: number,
): boolean {
  return ([0, 1] as const).every((k) => high[k]! + beside > min[k] && low[k]! - beside < max[k]);
}

/** True where screws go down through what is below, under the runner, which a stop says: no driver would get there. */
function overScrews(draft: Draft, spec: CentreSpec, lies: LiesOn): boolean {
  const t = (of: Traced) => draft.ledger.ticks(of);
  const { space } = spec;
  const covered = draft.fasteners.some((f) => {
    const head = f.head.map(t);
    const down = f.through[0] === space.below.id && head[2] === t(space.at[2]);
    return down && isUnder(lies, head, head, t(f.diameter));
  });
  if (covered)
    noPlace(
      draft,
      spec,
      `over screws that go down through the ${space.below.name}.`,
      'Make the opening wider or narrower, or let the drawer run on the uprights.',
    );
  return covered;
}

/** True where the runner would close a hole or vent in what is below, which a stop says. */
function overHole(draft: Draft, spec: CentreSpec, lies: LiesOn): boolean {
  const t = (of: Traced) => draft.ledger.ticks(of);
  const { below } = spec.space;
  const place = placeTicks(draft.ledger, below.place);
  const closed = below.features.find((f) => {
    const isOpen = (f.kind === 'hole' && f.depth === undefined) || f.kind === 'slot';
    if (!isOpen) return false;
    const size =
      f.kind === 'hole'
        ? [t(f.diameter), t(f.diameter)]
        : [t(f.length), t(f.width)].sort((a, b) => (f.run === 'length' ? b - a : a - b));
    const low = f.at.map((at, k) => ticks(Math.floor(t(at) - size[k]! / 2)));
    const high = f.at.map((at, k) => ticks(Math.ceil(t(at) + size[k]! / 2)));
    const { min, max } = toPiece(place, {
      min: [low[0]!, low[1]!, ticks(0)],
      max: [high[0]!, high[1]!, t(below.thickness)],
    });
    return isUnder(lies, min, max, t(draft.ledger.row(HOLES.beside)));
  });
  if (closed)
    noPlace(
      draft,
      spec,
      `over what goes through the ${below.name} ${closed.purpose}.`,
      'Move that aside, or let the drawer run on the uprights.',
    );
  return closed !== undefined;
}

function noPlace(draft: Draft, { record, name }: CentreSpec, over: string, says: string): void {
  draft.stop('drawers.no-place', record, 'carriedBy', `The centre runner of the ${name} would lie ${over}`, {
    says,
  });
}

function strip(
  draft: Draft,
  { record, suffix, name, strips }: CentreSpec,
  role: string,
  what: string,
  at: readonly [Traced, Traced, Traced],
  long: Traced,
  width: '+x' | '-x',
): DraftPart {
  return draft.panel({
    record: record.id,
    role: `${role}${suffix}`,
    name: `${what} of ${name}`,
    family: 'drawer runner',
    lot: strips.lot,
    at,
    size: [strips.wide, long, strips.thick],
    length: '+y',
    // The show face looks away from what it is glued to.
    width,
  });
}

function glue(draft: Draft, strip: DraftPart, toward: '+z' | '-z', mate: DraftPart): void {
  draft.joints.push({
    id: `${strip.id}>${mate.id}`,
    kind: 'butt',
    duty: 'drawer',
    hold: 'glue',
    part: strip.id,
    side: 'under',
    mate: mate.id,
    mateSide: sideLooking(mate.place, toward === '+z' ? '-z' : '+z'),
    contact: contactBox(draft, strip, 'under', mate),
    fasteners: [],
  });
}
