import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

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
