import { TICKS_PER_MM } from '../../measure/index.ts';
import type { Point } from '../../solid/index.ts';
import { type Member, planesOf } from '../assembly.ts';
import type { Box } from '../shape-bounds.ts';

/** A hand with a cloth, laid flat, goes through a gap so wide; what is narrower inside is left to a brush, mm (from memory). */
const HAND_MM = 40;
/** Places are reckoned to so much, which no hand feels, and which keeps the cells few, mm (our own choice). */
const STEP_MM = 2;

/**
 * Marks of members with a broad face most of which looks into a space that no hand finds a way to from outside, past what
 * stands there. Holes don't count as ways: a cable goes through them and no hand. A panel that only begins or ends in such a
 * space has the rest of its faces outside, and stays flat.
 *
 * The middle of a hand is kept half a hand off everything, and let run from outside wherever there is room.
 */
export function closedIn(members: readonly Member[]): readonly string[] {
  const boxes = members.map(boxOf);
  const room = new Room(boxes);
  return members
    .filter((_, i) => {
      const box = boxes[i]!;
      const sides = box.min.map((from, axis) => box.max[axis]! - from);
      const across = sides.indexOf(Math.min(...sides));
      const broad = sides.reduce((area, side, axis) => (axis === across ? area : area * side), 1);
      return room.closedBefore(box, across).some((area) => area > broad / 2);
    })
    .map((m) => m.mark);
}

/** The box of a member, mm. */
function boxOf(member: Member): Box {
  const planes = planesOf(member);
  const mm = (t: number) => STEP_MM * Math.round(t / TICKS_PER_MM / STEP_MM);
  return {
    min: [mm(planes['-x']), mm(planes['-y']), mm(planes['-z'])],
    max: [mm(planes['+x']), mm(planes['+y']), mm(planes['+z'])],
  };
}

const HALF = HAND_MM / 2;
const AXES = [0, 1, 2] as const;
const [FREE, FILLED, REACHED] = [0, 1, 2];

/** From the first cell to before the second. */
type Range = readonly [from: number, to: number];

/** Where the middle of a hand may be, in cells between all planes half a hand off some boxes; the outermost cells are outside. */
class Room {
  private readonly planes: readonly (readonly number[])[];
  /** How far apart neighbours along each axis lie in the list of cells. */
  private readonly steps: Point;
  private readonly cells: Uint8Array;

  constructor(boxes: readonly Box[]) {
    this.planes = AXES.map((axis) =>
      [...new Set(boxes.flatMap((b) => [b.min[axis] - HALF, b.max[axis] + HALF]))].sort((a, b) => a - b),
    );
    const [nx, ny, nz] = this.planes.map((p) => p.length + 1) as [number, number, number];
    this.steps = [ny * nz, nz, 1];
    this.cells = new Uint8Array(nx * ny * nz);
    for (const { min, max } of boxes)
      this.each(
        [0, 1, 2].map((a) => this.range(a, min[a]! - HALF, max[a]! + HALF)),
        (cell) => {
          this.cells[cell] = FILLED!;
        },
      );
    this.letIn();
  }

  /** How much of either side of a box across an axis looks into room that is free, and that nothing from outside reaches, mm². */
  closedBefore({ min, max }: Box, across: number): readonly [below: number, above: number] {
    const planes = this.planes[across]!;
    const along = AXES.filter((a) => a !== across);
    const before = (nth: number): number => {
      let area = 0;
      const cells = AXES.map((a): Range => (a === across ? [nth, nth + 1] : this.range(a, min[a]!, max[a]!)));
      this.each(cells, (cell, at) => {
        if (this.cells[cell] !== FREE) return;
        const [a, b] = along.map((axis) => {
          const own = this.planes[axis]!;
          return Math.min(own[at[axis]!]!, max[axis]!) - Math.max(own[at[axis]! - 1]!, min[axis]!);
        });
        area += a! * b!;
      });
      return area;
    };
    return [before(planes.indexOf(min[across]! - HALF)), before(planes.indexOf(max[across]! + HALF) + 1)];
  }

  /** What is outside goes wherever there is room beside it. */
  private letIn(): void {
    const { cells, steps } = this;
    const [last, row, layer] = this.planes.map((p) => p.length) as [number, number, number];
    const next = [0];
    const enter = (cell: number) => {
      if (cells[cell] !== FREE) return;
      cells[cell] = REACHED!;
      next.push(cell);
    };
    cells[0] = REACHED!;
    for (let cell = next.pop(); cell !== undefined; cell = next.pop()) {
      const x = Math.floor(cell / steps[0]);
      const y = Math.floor(cell / steps[1]) % (row + 1);
      const z = cell % steps[1];
      if (x > 0) enter(cell - steps[0]);
      if (x < last) enter(cell + steps[0]);
      if (y > 0) enter(cell - steps[1]);
      if (y < row) enter(cell + steps[1]);
      if (z > 0) enter(cell - 1);
      if (z < layer) enter(cell + 1);
    }
  }

  /** The cells of an axis that share something with what lies between two places on it. */
  private range(axis: number, from: number, to: number): Range {
    const planes = this.planes[axis]!;
    const [first, last] = [planes.findIndex((p) => p > from), planes.findIndex((p) => p >= to)];
    return [first < 0 ? planes.length : first, (last < 0 ? planes.length : last) + 1];
  }

  private each(ranges: readonly Range[], does: (cell: number, at: Point) => void): void {
    const [xs, ys, zs] = ranges as [Range, Range, Range];
    for (let x = xs[0]; x < xs[1]; x++)
      for (let y = ys[0]; y < ys[1]; y++)
        for (let z = zs[0]; z < zs[1]; z++) does(x * this.steps[0] + y * this.steps[1] + z, [x, y, z]);
  }
}
