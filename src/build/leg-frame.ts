import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { squareLines } from './glue/square-lines.ts';

/** True for an apron screwed to a leg. */
export function isApronJoint(joint: Joint): boolean {
  return joint.duty === 'frame' && joint.kind === 'butt';
}

/**
 * Legs and aprons of a base in the order in which they are put together: a leg, and then what touches what is there
 * already, aprons before the legs at their far ends. None of another kind of base.
 */
export function legFrame(bench: Bench, parts: readonly Part[]): readonly Part[] {
  const joints = bench.setOut.joints.filter(isApronJoint);
  const waiting = parts.filter((p) => joints.some((j) => j.part === p.id || j.mate === p.id));
  const order: Part[] = [];
  const touches = (p: Part) =>
    joints.some(
      (j) =>
        (j.part === p.id && order.some((o) => o.id === j.mate)) ||
        (j.mate === p.id && order.some((o) => o.id === j.part)),
    );
  while (waiting.length > 0) {
    const next = waiting.find(touches) ?? waiting[0]!;
    waiting.splice(waiting.indexOf(next), 1);
    order.push(next);
  }
  return order;
}

/** What the first card of such a base says. */
export const UPSIDE_DOWN = [
  'The base is put together upside down on a flat board, the upper ends of the legs down on it, so that legs and aprons come level there. Cards and drawings speak of it as it will stand.',
  'Mark the legs by the triangle, and keep each at its corner: the best faces outward.',
];

/** Checks such a base by its diagonals, before the case is set on it. */
export function squareLegs(bench: Bench, name: string, parts: readonly Part[]): void {
  const l = bench.ledger;
  const all = parts.map((p) => planesOf(l, p).planes);
  const reach = (low: '-x' | '-y', high: '+x' | '+y') => {
    const [from, to] = [all.map((p) => p[low]), all.map((p) => p[high])];
    const least = from.reduce((a, b) => (l.ticks(b) < l.ticks(a) ? b : a));
    const most = to.reduce((a, b) => (l.ticks(b) > l.ticks(a) ? b : a));
    return l.less('from the outer face of a leg to that of the opposite one', most, least);
  };
  const square = squareLines(bench, {
    what: 'the legs',
    width: reach('-x', '+x'),
    height: reach('-y', '+y'),
    parts,
    wet: false,
  });
  bench.do(
    {
      id: `${name}/check-square`,
      kind: 'check-square',
      stage: 'assemble',
      title: 'Check the legs for square',
      does: { act: 'other', on: parts.map((p) => p.mark) },
      lengths: square.lengths,
      lines: square.lines,
    },
    [name],
  );
}
