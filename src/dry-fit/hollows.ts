import type { Frame, Point, Shape, Solids } from '../solid/index.ts';
import { type Box, boundsOf, inFrame, isBox, overlap } from './shape-bounds.ts';
import { shapeKey } from './shape-key.ts';
import { singleCuts } from './single-cuts.ts';

/** A hole, a rabbet, a slope: something that is missing from the box a part fills. */
export interface Hollow {
  readonly volume: number;
  readonly centre: Point;
  /** The middle of the box it fills. */
  readonly middle: Point;
  /** Sides of the box it fills. */
  readonly sides: Point;
  /** The rabbets, channels and notches that it was made by: where they run into one another, its own box and volume don’t tell of each. */
  readonly cuts?: readonly Pick<Hollow, 'middle' | 'sides'>[];
  /** It is nothing but those. */
  readonly straight?: true;
}

/** A shape as the box it fills and the hollows in that box. */
export interface Hollowed {
  readonly box: Box;
  readonly hollows: readonly Hollow[];
}

/** Slivers below this are rounding, mm³. */
export const SLIVER = 15;
/** Smaller ones are kept all the same, for what is a little larger on the other side to be paired with. */
const KEPT = SLIVER / 2;

/** Finds hollows. What is alike is looked into once, wherever it lies: most of a piece's holes are one and the same. */
export class Hollows {
  private readonly solids: Solids;
  private readonly known = new Map<string, readonly Hollow[]>();
  private readonly shapes = new WeakMap<Shape, Hollowed>();
  /** What was found in a board before it was set somewhere, by the list of its cuts. */
  private readonly boards = new WeakMap<readonly Shape[], Hollowed>();

  constructor(solids: Solids) {
    this.solids = solids;
  }

  /** The box and hollows of a shape that is a box with cuts in it, wherever it stands. */
  of(shape: Shape): Hollowed {
    const known = this.shapes.get(shape) ?? this.hollowed(shape);
    this.shapes.set(shape, known);
    return known;
  }

  private hollowed(shape: Shape): Hollowed {
    const { body, cuts, frame } = opened(shape);
    const box = boundsOf(body);
    const hollows = this.inBoard(box, cuts);
    if (!frame) return { box, hollows };
    return {
      box: boundsOf({ kind: 'moved', frame, body: { kind: 'box', ...box } }),
      hollows: hollows.map((h) => ({
        ...h,
        centre: inFrame(frame, h.centre),
        middle: inFrame(frame, h.middle),
        sides: turned(frame, h.sides),
        ...(h.cuts
          ? { cuts: h.cuts.map((c) => ({ middle: inFrame(frame, c.middle), sides: turned(frame, c.sides) })) }
          : {}),
      })),
    };
  }

  private inBoard(box: Box, cuts: readonly Shape[]): readonly Hollow[] {
    const known = this.boards.get(cuts);
    // What was cut off behind its cuts has the same list and another box.
    if (known && isSame(known.box, box)) return known.hollows;
    const hollows = touching(cuts).flatMap((group) => this.hollowsOf(group, box));
    this.boards.set(cuts, { box, hollows });
    return hollows;
  }

  /** What a group of cuts takes out of a box. Cutters reach out of the wood: only what they share with it counts. */
  private hollowsOf(group: readonly Shape[], box: Box): readonly Hollow[] {
    const reach = boundsOf({ kind: 'union', of: group });
    const by: Point = [-reach.min[0], -reach.min[1], -reach.min[2]];
    const of = group.map((s) => shifted(s, by));
    // The box matters only where the cuts reach it.
    const within: Box = {
      min: plus(larger(box.min, minus(reach.min, BEYOND)), by),
      max: plus(smaller(box.max, plus(reach.max, BEYOND)), by),
    };
    const key = shapeKey([of, within]);
    let found = this.known.get(key);
    if (!found) {
      found = this.solids.within(() => this.taken(of, within));
      this.known.set(key, found);
    }
    const back = <T extends { readonly middle: Point }>(h: T): T => ({ ...h, middle: minus(h.middle, by) });
    return found.map((h) => ({
      ...back(h),
      centre: minus(h.centre, by),
      ...(h.cuts ? { cuts: h.cuts.map(back) } : {}),
    }));
  }

  private taken(of: readonly Shape[], within: Box): readonly Hollow[] {
    const { min, max } = within;
    if ([0, 1, 2].some((i) => min[i]! >= max[i]!)) return [];
    const cuts = singleCuts(this.solids, of, within);
    const straight = of.every(isBox);
    return this.solids
      .make({ kind: 'union', of })
      .common(this.solids.make({ kind: 'box', min, max }))
      .pieces()
      .map((p) => {
        const box = p.bounds()!;
        return {
          volume: p.volume(),
          centre: p.centre(),
          middle: middleOf(box),
          sides: sidesOf(box),
          ...(cuts.length > 0
            ? {
                cuts: cuts
                  .filter((c) => overlap(c, box))
                  .map((c) => ({ middle: middleOf(c), sides: sidesOf(c) })),
                ...(straight ? { straight } : {}),
              }
            : {}),
        };
      })
      .filter((h) => h.volume > KEPT);
  }
}

function isSame(a: Box, b: Box): boolean {
  return [0, 1, 2].every((i) => a.min[i] === b.min[i] && a.max[i] === b.max[i]);
}

const BEYOND: Point = [1, 1, 1];

/** A part's shape taken apart: a box, the cuts in it, and where they stand. */
function opened(shape: Shape): {
  readonly body: Shape;
  readonly cuts: readonly Shape[];
  readonly frame?: Frame;
} {
  if (shape.kind === 'moved') return { ...opened(shape.body), frame: shape.frame };
  if (shape.kind === 'without') return { body: shape.body, cuts: shape.cuts };
  return { body: shape, cuts: [] };
}

/** Cuts in groups that may touch one another: each is far quicker looked into than all together. */
function touching(cuts: readonly Shape[]): readonly (readonly Shape[])[] {
  const groups: { cuts: Shape[]; boxes: Box[] }[] = [];
  for (const cut of cuts) {
    const box = boundsOf(cut);
    const met = groups.filter((g) => g.boxes.some((b) => overlap(b, box)));
    for (const g of met) groups.splice(groups.indexOf(g), 1);
    groups.push({
      cuts: [...met.flatMap((g) => g.cuts), cut],
      boxes: [...met.flatMap((g) => g.boxes), box],
    });
  }
  return groups.map((g) => g.cuts);
}

function shifted(shape: Shape, by: Point): Shape {
  switch (shape.kind) {
    case 'box':
      return { kind: 'box', min: plus(shape.min, by), max: plus(shape.max, by) };
    case 'cylinder':
      return { ...shape, from: plus(shape.from, by), to: plus(shape.to, by) };
    case 'hull':
      return { kind: 'hull', points: shape.points.map((p) => plus(p, by)) };
    case 'moved':
      return { ...shape, frame: { ...shape.frame, origin: plus(shape.frame.origin, by) } };
    default:
      return { kind: 'moved', body: shape, frame: { origin: by, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } };
  }
}

/** Sides of a box in a frame, along the axes outside. */
function turned(frame: Frame, sides: Point): Point {
  const along = (i: number) =>
    Math.abs(frame.x[i]! * sides[0] + frame.y[i]! * sides[1] + frame.z[i]! * sides[2]);
  return [along(0), along(1), along(2)];
}

function sidesOf({ min, max }: Box): Point {
  return minus(max, min);
}

export function plus(a: Point, b: Point): Point {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function larger(a: Point, b: Point): Point {
  return [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])];
}

function smaller(a: Point, b: Point): Point {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])];
}

function middleOf({ min, max }: Box): Point {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}
