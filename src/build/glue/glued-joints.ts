import type { Traced } from '../../measure/index.ts';
import { isGlued, type Joint } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import type { Operation } from '../operation.ts';

/** Joints that take glue when a part is set. A back in grooves is put in dry. */
export function takesGlue(joint: Joint): boolean {
  return isGlued(joint) && joint.kind !== 'groove';
}

/** The joints that an operation closes with glue, a part being set against those that stand in its assembly. */
export function gluedJoints(bench: Bench, o: Operation, standing: ReadonlySet<string>): readonly Joint[] {
  if (o.does.act !== 'set') return [];
  const part = bench.setOut.parts.find((p) => p.mark === (o.does as { workpiece: string }).workpiece);
  if (!part) return [];
  return bench.setOut.joints.filter((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    return takesGlue(j) && other !== undefined && standing.has(other);
  });
}

/** How long a joint is, in millimetres: the longest side of where its faces meet. */
export function jointMm(bench: Bench, joint: Joint): number {
  const at = (t: Traced) => bench.ledger.ticks(t);
  const { min, max } = joint.contact;
  return Math.max(...min.map((low, i) => at(max[i]!) - at(low))) / 3200;
}
