import type { PieceDirection } from '../../build/index.ts';
import { axisOf, type Member } from '../assembly.ts';
import type { Box } from '../shape-bounds.ts';
import { boxOf } from './round-bar.ts';

/** Ways in for a shelf on edge: over the front, or from above. */
const FROM: readonly PieceDirection[] = ['-y', '+z'];

/** Boxes may overlap by so much, mm: a shelf has play between its uprights, and a hand gives way. */
const GIVES = 1;

/** The ways at which a shelf on edge is tried, from the front of where it lies to the back, as shares. */
const ALONG = [0, 0.25, 0.5, 0.75, 1];

/**
 * Whether a flat board that lies loose between two uprights could have come in on edge and been turned flat where it lies:
 * there is room round its middle for it to turn, and a straight way there for it on edge. Looks at boxes alone.
 * @param shelf the board, and the strips that edge it
 */
export function tiltsIn(there: readonly Member[], shelf: readonly Member[]): boolean {
  const boxes = there.map(boxOf);
  const all = shelf.map(boxOf);
  const end = (of: 'min' | 'max', k: 0 | 1 | 2) => Math[of](...all.map((b) => b[of][k]));
  const own: Box = {
    min: [end('min', 0), end('min', 1), end('min', 2)],
    max: [end('max', 0), end('max', 1), end('max', 2)],
  };
  const [deep, thick] = [own.max[1] - own.min[1], own.max[2] - own.min[2]];
  const turns = Math.hypot(deep, thick) / 2;
  const middle = [0, 1, 2].map((k) => (own.min[k]! + own.max[k]!) / 2);
  if (boxes.some((b) => isInDisc(b, own, middle, turns))) return false;
  return ALONG.some((share) => {
    const y = own.min[1] + (deep - thick) * share;
    const edge = spread(own, { 1: [y, y + thick], 2: [middle[2]! - deep / 2, middle[2]! + deep / 2] });
    return FROM.some((d) => !boxes.some((b) => press(b, outward(edge, d))));
  });
}

/** True for a box that stands in the disc that a shelf sweeps as it turns about its long axis. */
function isInDisc(box: Box, shelf: Box, middle: readonly number[], radius: number): boolean {
  const off = (k: 1 | 2) => Math.max(0, box.min[k] - middle[k]!, middle[k]! - box.max[k]);
  const beside = Math.min(box.max[0], shelf.max[0]) - Math.max(box.min[0], shelf.min[0]);
  return beside > GIVES && Math.hypot(off(1), off(2)) < radius - GIVES;
}

/** A box with other ends along some axes. */
function spread(box: Box, ends: Readonly<Partial<Record<1 | 2, readonly [number, number]>>>): Box {
  const side = (i: 0 | 1, of: Box['min']): Box['min'] => [
    of[0],
    ends[1]?.[i] ?? of[1],
    ends[2]?.[i] ?? of[2],
  ];
  return { min: side(0, box.min), max: side(1, box.max) };
}

/** A box drawn out without end in a direction. */
function outward(box: Box, d: PieceDirection): Box {
  const { axis, sign } = axisOf(d);
  const [min, max] = [[...box.min], [...box.max]];
  if (sign > 0) max[axis] = Number.POSITIVE_INFINITY;
  else min[axis] = Number.NEGATIVE_INFINITY;
  return { min: min as never, max: max as never };
}

function press(a: Box, b: Box): boolean {
  return [0, 1, 2].every((k) => Math.min(a.max[k]!, b.max[k]!) - Math.max(a.min[k]!, b.min[k]!) > GIVES);
}
