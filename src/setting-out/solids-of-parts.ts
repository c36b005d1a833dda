import { pocketShape, SINK_DEGREES } from '../materials/index.ts';
import { type Ledger, type Traced, toMm } from '../measure/index.ts';
import type { Frame, Point, Shape } from '../solid/index.ts';
import type {
  Bevel,
  BiscuitSlot,
  Feature,
  Groove,
  Hole,
  Notch,
  Pocket,
  Rabbet,
  Slot,
  SplineGroove,
} from './feature.ts';
import type { Part, Side } from './part.ts';
import { axisOf, type Direction } from './place.ts';
import type { SetOut } from './set-out.ts';

/** What a part's shape shows. */
export interface ShapeOptions {
  /** Pockets, pilot and clearance holes, dowel holes, biscuit slots and grooves for splines; shown unless this is false. */
  readonly fastenerHoles?: boolean;
}

/** Cutters begin this far outside the wood (mm), so that no skin is left where they enter. */
const OUTSIDE = 1;

/** The finished part as a solid where it stands in the piece, mm, with its features cut to their drawn sizes. */
export function shapeOf(setOut: SetOut, part: Part, options: ShapeOptions = {}): Shape {
  const blank = new Blank(setOut.ledger, part);
  const cuts = part.features
    .filter((f) => options.fastenerHoles !== false || !FASTENERS.has(f.kind) || isWide(f))
    .flatMap((f) => cutsOf(blank, f));
  const body: Shape = { kind: 'box', min: [0, 0, 0], max: blank.size };
  return {
    kind: 'moved',
    body: cuts.length ? { kind: 'without', body, cuts } : body,
    frame: frameOf(setOut.ledger, part),
  };
}

const FASTENERS: ReadonlySet<Feature['kind']> = new Set(['hole', 'pocket', 'biscuit-slot', 'spline-groove']);

/** A hinge’s cup, a finger hole or a hole for a plug takes enough away to count as shape. */
function isWide(f: Feature): boolean {
  return f.kind === 'hole' && WIDE.has(f.use);
}

const WIDE: ReadonlySet<Hole['use']> = new Set(['cup', 'cable', 'vent', 'finger', 'row', 'leveller']);

/** The frame in which a part's own length, width and thickness run along x, y and z. */
function frameOf(ledger: Ledger, { place }: Part): Frame {
  const origin = place.origin.map((t) => toMm(ledger.ticks(t))) as unknown as Point;
  return { origin, x: unit(place.length), y: unit(place.width), z: unit(place.thickness) };
}

function unit(direction: Direction): Point {
  const { axis, sign } = axisOf(direction);
  return [0, 1, 2].map((i) => (i === axis ? sign : 0)) as unknown as Point;
}

/** A part's blank in its own coordinates, with the ways to speak of its sides. */
class Blank {
  readonly size: Point;
  readonly ledger: Ledger;
  readonly features: readonly Feature[];

  constructor(ledger: Ledger, part: Part) {
    this.ledger = ledger;
    this.features = part.features;
    this.size = [this.mm(part.length), this.mm(part.width), this.mm(part.thickness)];
  }

  mm(t: Traced): number {
    return toMm(this.ledger.ticks(t));
  }

  /**
   * A point `inward` from a side: `along` the edge and `up` from the under face; on a face along the length and
   * across the width.
   */
  at(side: Side, inward: number, along: number, up: number): Point {
    const [length, width, thickness] = this.size;
    switch (side) {
      case 'start':
        return [inward, along, up];
      case 'end':
        return [length - inward, along, up];
      case 'near':
        return [along, inward, up];
      case 'far':
        return [along, width - inward, up];
      case 'under':
        return [along, up, inward];
      case 'show':
        return [along, up, thickness - inward];
    }
  }

  /** Length of an edge. */
  run(edge: Side): number {
    return edge === 'start' || edge === 'end' ? this.size[1] : this.size[0];
  }

  /** How far it goes in from a side to the opposite one. */
  through(side: Side): number {
    return side === 'under' || side === 'show'
      ? this.size[2]
      : side === 'start' || side === 'end'
        ? this.size[0]
        : this.size[1];
  }

  /** A height above the under face, given as a depth below either face. */
  height(face: 'show' | 'under', depth: number): number {
    return face === 'under' ? depth : this.size[2] - depth;
  }
}

function cutsOf(blank: Blank, f: Feature): readonly Shape[] {
  switch (f.kind) {
    case 'rabbet':
      return [rabbetCut(blank, f)];
    case 'groove':
      return [rabbetCut(blank, f, blank.mm(f.inset))];
    case 'notch':
      return [notchCut(blank, f)];
    case 'bevel':
      return [bevelCut(blank, f)];
    case 'hole':
      return holeCuts(blank, f);
    case 'slot':
      return slotCuts(blank, f);
    case 'pocket':
      return pocketCuts(blank, f);
    case 'biscuit-slot':
      return [biscuitCut(blank, f)];
    case 'spline-groove':
      return [splineCut(blank, f)];
  }
}

/** A box out of a face, beside an edge; a rabbet begins at the edge itself. */
function rabbetCut(blank: Blank, f: Rabbet | Groove, inset?: number): Shape {
  const { edge, face, width, depth, from, to } = f;
  const begins = blank.mm(from) === 0 ? -OUTSIDE : blank.mm(from);
  const ends = blank.mm(to) === blank.run(edge) ? blank.mm(to) + OUTSIDE : blank.mm(to);
  const a = blank.at(edge, inset ?? -OUTSIDE, begins, blank.height(face, -OUTSIDE));
  const b = blank.at(edge, (inset ?? 0) + blank.mm(width), ends, blank.height(face, blank.mm(depth)));
  return boxOf(a, b);
}

/** A corner taken out through the whole thickness. */
function notchCut(blank: Blank, { end, edge, length, width }: Notch): Shape {
  const [long, wide, thick] = blank.size;
  const x = end === 'start' ? [-OUTSIDE, blank.mm(length)] : [long - blank.mm(length), long + OUTSIDE];
  const y = edge === 'near' ? [-OUTSIDE, blank.mm(width)] : [wide - blank.mm(width), wide + OUTSIDE];
  return boxOf([x[0]!, y[0]!, -OUTSIDE], [x[1]!, y[1]!, thick + OUTSIDE]);
}

function boxOf(a: Point, b: Point): Shape {
  return {
    kind: 'box',
    min: a.map((v, i) => Math.min(v, b[i]!)) as never,
    max: a.map((v, i) => Math.max(v, b[i]!)) as never,
  };
}

/** The wedge between the slanting plane and the square end: the full face keeps its edge. */
function bevelCut(blank: Blank, { edge, angle, fullFace }: Bevel): Shape {
  const slope = angle === 45 ? 1 : Math.tan((angle * Math.PI) / 180);
  const thickness = blank.size[2];
  // Above the full face and below the other one, both on the plane of the cut; and the corner outside both.
  const corners: readonly (readonly [inward: number, depth: number])[] = [
    [-OUTSIDE * slope, -OUTSIDE],
    [(thickness + OUTSIDE) * slope, thickness + OUTSIDE],
    [-OUTSIDE * slope, thickness + OUTSIDE],
  ];
  const points = [-OUTSIDE, blank.run(edge) + OUTSIDE].flatMap((along) =>
    corners.map(([inward, depth]) => blank.at(edge, inward, along, blank.height(fullFace, depth))),
  );
  return { kind: 'hull', points };
}

/** A hole enters at the wood's surface, which in a rabbet is the rabbet's floor; its depth counts from there. */
function holeCuts(blank: Blank, hole: Hole): readonly Shape[] {
  const [along, up] = [blank.mm(hole.at[0]), blank.mm(hole.at[1])];
  const surface = floorAt(blank, hole.side, along, up);
  const depth =
    hole.depth === undefined ? blank.through(hole.side) + OUTSIDE : surface + blank.mm(hole.depth);
  const radius = blank.mm(hole.diameter) / 2;
  const point = (inward: number) => blank.at(hole.side, inward, along, up);
  const bore: Shape = { kind: 'cylinder', from: point(-OUTSIDE), to: point(depth), radius };
  if (hole.counterbore) {
    const to = point(surface + blank.mm(hole.counterbore.depth));
    return [
      bore,
      { kind: 'cylinder', from: point(-OUTSIDE), to, radius: blank.mm(hole.counterbore.diameter) / 2 },
    ];
  }
  if (hole.countersink === undefined) return [bore];
  const mouth = blank.mm(hole.countersink) / 2;
  const slope = Math.tan((SINK_DEGREES * Math.PI) / 360);
  const sink: Shape = {
    kind: 'cylinder',
    from: point(surface - OUTSIDE),
    to: point(surface + (mouth - radius) / slope),
    radius: mouth + OUTSIDE * slope,
    toRadius: radius,
  };
  return [bore, sink];
}

/** A box from end to end, round at both, right through. */
function slotCuts(blank: Blank, { face, run, at, length, width }: Slot): readonly Shape[] {
  const radius = blank.mm(width) / 2;
  const half = blank.mm(length) / 2 - radius;
  const through = blank.through(face) + OUTSIDE;
  const point = (off: number, aside: number, inward: number) => {
    const [along, across] = run === 'length' ? [off, aside] : [aside, off];
    return blank.at(face, inward, blank.mm(at[0]) + along, blank.mm(at[1]) + across);
  };
  const end = (off: number): Shape => ({
    kind: 'cylinder',
    from: point(off, 0, -OUTSIDE),
    to: point(off, 0, through),
    radius,
  });
  return [boxOf(point(-half, -radius, -OUTSIDE), point(half, radius, through)), end(-half), end(half)];
}

/** A disc plunged into the slope of a mitred end, square to it, so far down the slope from the inner arris. */
function mitreSlotCut(blank: Blank, { side, at, slopeFrom, depth, kerf, cutter }: BiscuitSlot): Shape {
  const [y, down] = [blank.mm(at[0]), blank.mm(at[1]) * Math.SQRT1_2];
  const radius = blank.mm(cutter) / 2;
  const thick = blank.size[2];
  // Inward along the length and toward the outer face alike; down the slope is outward and toward that face.
  const out = slopeFrom === 'show' ? -1 : 1;
  const long = (x: number) => (side === 'start' ? x : blank.size[0] - x);
  const point = (inward: number, along: number): Point => [
    long(thick - down + (inward - along) * Math.SQRT1_2),
    y,
    (slopeFrom === 'show' ? thick - down : down) + out * (inward + along) * Math.SQRT1_2,
  ];
  const half = blank.mm(kerf) / 2;
  const middle = blank.mm(depth) - radius;
  return { kind: 'cylinder', from: point(middle, -half), to: point(middle, half), radius };
}

/** What a groove takes out of the slope of a mitred end, square to it, so far down the slope from the inner arris. */
function splineCut(blank: Blank, { edge, slopeFrom, inset, width, depth, from, to }: SplineGroove): Shape {
  const thick = blank.size[2];
  const near = blank.mm(inset);
  const begins = blank.mm(from) === 0 ? -OUTSIDE : blank.mm(from);
  const ends = blank.mm(to) === blank.run(edge) ? blank.mm(to) + OUTSIDE : blank.mm(to);
  // From the tip inward along the length, and down from the inner face.
  const point = (down: number, deep: number, along: number) =>
    blank.at(
      edge,
      thick - (down - deep) * Math.SQRT1_2,
      along,
      blank.height(slopeFrom, (down + deep) * Math.SQRT1_2),
    );
  const points = [begins, ends].flatMap((along) =>
    [near, near + blank.mm(width)].flatMap((down) =>
      [-OUTSIDE, blank.mm(depth)].map((deep) => point(down, deep, along)),
    ),
  );
  return { kind: 'hull', points };
}

/** A disc plunged in: it lies flat in an edge, and stands along its run in a face. */
function biscuitCut(blank: Blank, slot: BiscuitSlot): Shape {
  if (slot.slopeFrom) return mitreSlotCut(blank, slot);
  const { side, at, run, depth, kerf, cutter } = slot;
  const radius = blank.mm(cutter) / 2;
  const inward = blank.mm(depth) - radius;
  const half = blank.mm(kerf) / 2;
  const [first, second] = [blank.mm(at[0]), blank.mm(at[1])];
  const face = side === 'show' || side === 'under';
  const end = (off: number) =>
    face && run === 'width'
      ? blank.at(side, inward, first + off, second)
      : blank.at(side, inward, first, second + off);
  return { kind: 'cylinder', from: end(-half), to: end(half), radius };
}

/** How far in from an edge the wood begins at a place of it: nothing, or a rabbet's width. */
function floorAt(blank: Blank, side: Side, along: number, up: number): number {
  for (const f of blank.features) {
    if (f.kind !== 'rabbet' || f.edge !== side) continue;
    const below = f.face === 'under' ? up : blank.size[2] - up;
    if (below < blank.mm(f.depth) && along > blank.mm(f.from) && along < blank.mm(f.to))
      return blank.mm(f.width);
  }
  return 0;
}

/** The wide bore from outside the face down to the seat of the head, and the hole on to the joint. */
function pocketCuts(blank: Blank, { edge, face, along }: Pocket): readonly Shape[] {
  const shape = pocketShape(blank.size[2]);
  const lean = (shape.degrees * Math.PI) / 180;
  const place = blank.mm(along);
  const onAxis = (s: number) =>
    blank.at(edge, s * Math.cos(lean), place, blank.height(face, shape.middle - s * Math.sin(lean)));
  return [
    { kind: 'cylinder', from: onAxis(shape.seat), to: onAxis(shape.out + OUTSIDE), radius: shape.boreRadius },
    { kind: 'cylinder', from: onAxis(-OUTSIDE), to: onAxis(shape.seat + OUTSIDE), radius: shape.shankRadius },
  ];
}
