import type { Point, Shape } from '../solid/index.ts';
import { type Box, boundsOf, isBox, overlap } from './shape-bounds.ts';

/** Between what and what a volume lies, mm³. */
export interface Between {
  readonly least: number;
  readonly most: number;
}

/**
 * How much of a box is left when some shapes are cut out of it: exactly, but for rounding, where all that reach it are boxes along
 * the axes, as dados, rabbets and notches are. Of slopes and holes it knows only the boxes that they lie in. Most questions
 * about wood need no more, and a solid modeller takes a hundred times as long.
 */
export function woodLeft(box: Box, cuts: readonly Shape[]): Between {
  const boxes: Box[] = [];
  const others: Box[] = [];
  for (const cut of cuts) (isBox(cut) ? boxes : others).push(boundsOf(cut));
  const most = volumeLeft(box, boxes, 0);
  if (others.length === 0) return { least: most, most };
  return { least: volumeLeft(box, [...boxes, ...others], 0), most };
}

/** What is left of a box beside the cuts from one on: each parts it into the boxes round it. */
function volumeLeft({ min, max }: Box, cuts: readonly Box[], from: number): number {
  for (let n = from; n < cuts.length; n++) {
    const cut = cuts[n]!;
    if (!overlap({ min, max }, cut)) continue;
    let volume = 0;
    const [low, high]: [Mutable, Mutable] = [[...min], [...max]];
    for (const axis of AXES) {
      if (cut.min[axis] > low[axis]) {
        volume += volumeLeft({ min: [...low], max: withSide(high, axis, cut.min[axis]) }, cuts, n + 1);
        low[axis] = cut.min[axis];
      }
      if (cut.max[axis] < high[axis]) {
        volume += volumeLeft({ min: withSide(low, axis, cut.max[axis]), max: [...high] }, cuts, n + 1);
        high[axis] = cut.max[axis];
      }
    }
    return volume;
  }
  return (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
}

type Mutable = [number, number, number];
const AXES = [0, 1, 2] as const;

function withSide(corner: Mutable, axis: 0 | 1 | 2, to: number): Point {
  const moved: Mutable = [...corner];
  moved[axis] = to;
  return moved;
}
