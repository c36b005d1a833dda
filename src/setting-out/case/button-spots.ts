import { BUTTONS, SETTING_OUT } from '../../materials/index.ts';
import type { RatioRow, Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import type { Bores, Hollow } from '../joints/bores.ts';
import { planeOf, sideLooking } from '../joints/contact.ts';
import { driverRoom } from '../joints/driver-room.ts';
import type { ChosenScrew } from '../joints/screw-choice.ts';
import { axisOf, boxTicks, type TracedBox } from '../place.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** A top on uprights that is to be held by buttons, and what stands when they are screwed on. */
export interface ButtonsSpec {
  readonly frame: CaseFrame;
  readonly board: DraftPart;
  readonly uprights: readonly DraftPart[];
  readonly standing: readonly DraftPart[];
}

/** The sizes of the buttons at one upright. */
export interface ButtonSizes {
  readonly thick: Traced;
  readonly wide: Traced;
  /** How much is sawn off above the tongue. */
  readonly lip: Traced;
  /** From the upright’s end down to the mortise: less than that where the upright may come out short of the top. */
  readonly inset: Traced;
  /** How wide the mortise is, up and down, and how deep. */
  readonly mortise: Traced;
  readonly deep: Traced;
  /** How far the tongue stands in the upright, how long it is, and the whole button. */
  readonly inside: Traced;
  readonly tongue: Traced;
  readonly long: Traced;
}

/** Where one button comes, in the piece. */
export interface ButtonSpot {
  /** The way from its upright to the button. */
  readonly towards: '+x' | '-x';
  readonly box: TracedBox;
  /** Front and rear end of its mortise. */
  readonly mortise: readonly [Traced, Traced];
  /** The same as a channel in the upright. */
  readonly hollow: Hollow;
  /** The head of its screw, in the middle of what lies against the top. */
  readonly screw: Triple;
}

interface SpotsSpec extends ButtonsSpec {
  readonly upright: DraftPart;
  readonly towards: '+x' | '-x';
  readonly sizes: ButtonSizes;
  readonly movement: RatioRow;
  readonly screw: ChosenScrew;
}

/** Steps that a button may be moved along where something is in its way: the shortest way first. */
const STEPS = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6];

/**
 * The buttons at one face of an upright: the last near the back, the others evenly between it and the screw in front.
 * Undefined where one of them finds no place.
 */
export function buttonSpots(draft: Draft, bores: Bores, spec: SpotsSpec): readonly ButtonSpot[] | undefined {
  const l = draft.ledger;
  const { frame, board, upright, sizes } = spec;
  const t = (x: Traced) => l.ticks(x);
  const held = draft.fasteners.find((f) => f.through.includes(upright.id) && f.through.includes(board.id));
  if (!held) return undefined;
  const front = upright.box.min[1];
  const first = l.less('from the front to the screw that holds the top', held.head[1], front);
  const rear = l.least(
    'back of the space, or of what stands in it',
    l.sum('where the inside ends behind', frame.panelFront, frame.insideDepth),
    upright.box.max[1],
  );
  const wanted = l.less('from the front to the last button', rear, front, l.row(BUTTONS.fromBack));
  const nearest = l.sum('behind the screw in front', first, l.row(BUTTONS.behindFirst));
  const last = t(wanted) >= t(nearest) ? wanted : nearest;
  const run = l.less('from the screw in front to the last button', last, first);
  const count = Math.max(1, Math.ceil(t(run) / t(l.row(BUTTONS.most))));
  const even = l.share(
    'an even spacing of the buttons',
    run,
    Array.from({ length: count }, () => 1),
    0,
  );
  const spots: ButtonSpot[] = [];
  for (let k = 1; k <= count; k++) {
    const asked = l.round(
      'as it is marked',
      l.sum('from the front to the button', first, l.times('spacings up to here', even, k)),
      l.row(SETTING_OUT.setStep),
      'down',
    );
    const found = STEPS.map((n) =>
      spotAt(draft, spec, { held: first, front, at: aside(draft, asked, n) }),
    ).find(
      (spot) =>
        isInUpright(draft, spec, spot, rear) &&
        isClear(draft, bores, spec, spot) &&
        spots.every((s) => t(s.mortise[1]) < t(spot.mortise[0]) - t(sizes.wide)),
    );
    if (!found) return undefined;
    spots.push(found);
  }
  return spots;
}

function aside(draft: Draft, at: Traced, n: number): Traced {
  if (n === 0) return at;
  const l = draft.ledger;
  const by = l.times('steps aside', l.row(BUTTONS.aside), Math.abs(n));
  return n > 0
    ? l.sum('moved clear of what is there', at, by)
    : l.less('moved clear of what is there', at, by);
}

/** A button so far behind the front edge of its upright. */
function spotAt(
  draft: Draft,
  { board, upright, towards, sizes, movement }: SpotsSpec,
  { held, front, at }: { readonly held: Traced; readonly front: Traced; readonly at: Traced },
): ButtonSpot {
  const l = draft.ledger;
  const half = (x: Traced) => l.ratio('half of it', x, SETTING_OUT.half);
  const middle = l.sum('middle of the button', front, at);
  const near = l.less('front side of the button', middle, half(sizes.wide));
  const moves = l.ratio(
    'how much the top moves there',
    l.less('how far it stands behind the screw in front', at, held),
    movement,
  );
  const room = l.round(
    'to the next whole step',
    l.sum('room beside the button in its mortise', moves, l.row(BUTTONS.beside)),
    l.row(SETTING_OUT.setStep),
    'up',
  );
  // Both ends as they are marked, so that rounding makes it no shorter.
  const marked = (x: Traced) => l.round('as it is marked', x, draft.stepOf('marking'), 'down');
  const [begins, ends] = [upright.box.min[1], upright.box.max[1]];
  const rear = l.sum('rear side of the button', near, sizes.wide);
  const mortise = [
    l.sum(
      'front end of the mortise',
      begins,
      marked(l.less('from the front edge to the mortise', near, begins, room)),
    ),
    l.less(
      'rear end of the mortise',
      ends,
      marked(l.less('from the back edge to the mortise', ends, rear, room)),
    ),
  ] as const;
  const positive = axisOf(towards).sign > 0;
  const face = planeOf(upright, sideLooking(upright.place, towards));
  const tip = positive
    ? l.less('tip of the tongue, in its mortise', face, sizes.inside)
    : l.sum('tip of the tongue, in its mortise', face, sizes.inside);
  const left = positive ? tip : l.less('inner end of the button', tip, sizes.long);
  const under = l.less('lower side of the button', board.box.min[2], sizes.thick);
  const box: TracedBox = {
    min: [left, near, under],
    max: [l.sum('right end of the button', left, sizes.long), rear, board.box.min[2]],
  };
  const body = l.sum(
    'from the tip to the screw, in the middle of the rest',
    sizes.tongue,
    half(l.less('what lies against the top', sizes.long, sizes.tongue)),
  );
  const x = positive ? l.sum('screw of the button', tip, body) : l.less('screw of the button', tip, body);
  const t = (v: Traced) => l.ticks(v);
  const upper = t(board.box.min[2]) - t(sizes.inset);
  const floor = positive ? t(face) - t(sizes.deep) : t(face) + t(sizes.deep);
  return {
    towards,
    box,
    mortise,
    hollow: {
      min: [Math.min(t(face), floor), t(mortise[0]), upper - t(sizes.mortise)],
      max: [Math.max(t(face), floor), t(mortise[1]), upper],
    },
    screw: [x, middle, under],
  };
}

/** True where the mortise ends in the wood of its upright, and the button before the back. */
function isInUpright(
  draft: Draft,
  { upright }: SpotsSpec,
  { mortise, box }: ButtonSpot,
  rear: Traced,
): boolean {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const wall = t(l.row(BUTTONS.lip));
  return (
    t(mortise[0]) >= t(upright.box.min[1]) + wall &&
    t(mortise[1]) <= t(upright.box.max[1]) - wall &&
    t(box.max[1]) + (t(box.min[1]) - t(mortise[0])) <= t(rear)
  );
}

/** True where nothing is bored or stands in the way of the mortise, the button or its screw, and a driver gets under it. */
function isClear(draft: Draft, bores: Bores, spec: SpotsSpec, spot: ButtonSpot): boolean {
  const l = draft.ledger;
  const { board, upright, screw, standing } = spec;
  if (bores.meetsHollow(upright.id, spot.hollow)) return false;
  const [x, y, z] = spot.screw.map((v) => l.ticks(v)) as unknown as [number, number, number];
  const way = {
    parts: [board.id],
    from: [x, y, z] as const,
    to: [x, y, z + l.ticks(screw.length)] as const,
    radius: l.ticks(screw.diameter) / 2,
  };
  if (bores.meets(way)) return false;
  const box = boxTicks(l, spot.box);
  const goes = l.ticks(spot.box.min[1]) - l.ticks(spot.mortise[0]);
  // No hole of the top comes out against it.
  const over = boxTicks(l, board.box);
  const under = {
    min: [box.min[0], box.min[1] - goes, over.min[2]] as const,
    max: [box.max[0], box.max[1] + goes, over.max[2]] as const,
  };
  if (bores.meetsHollow(board.id, under)) return false;
  const meets = draft.parts.some((p) => {
    if (p === upright || p === board) return false;
    const other = boxTicks(l, p.box);
    return (
      box.min[0] < other.max[0] &&
      box.max[0] > other.min[0] &&
      box.min[1] - goes < other.max[1] &&
      box.max[1] + goes > other.min[1] &&
      box.min[2] < other.max[2] &&
      box.max[2] > other.min[2]
    );
  });
  return !meets && driverRoom(draft, { head: [x, y, z], out: [0, 0, -1], own: spot }, standing);
}
