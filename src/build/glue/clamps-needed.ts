import { GLUE_WORK } from '../../materials/index.ts';
import type { Joint } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { jointMm } from './glued-joints.ts';

/** The clamps of a shop. */
export function clampsThere(bench: Bench): number {
  return bench.job.shop.tools.reduce((sum, t) => sum + (t.kind === 'clamp' ? t.count : 0), 0);
}

/**
 * Clamps that joints need together. Screws hold their joint, so it needs none; both ends of a panel are held by the
 * same clamps, and a mitred frame by two each way.
 */
export function clampsNeeded(bench: Bench, joints: readonly Joint[]): number {
  const lines = new Map<string, number>();
  let frame = 0;
  for (const j of joints) {
    if (j.hold === 'glue-and-screws') continue;
    if (j.kind === 'mitre') {
      frame = GLUE_WORK.frameClamps;
      continue;
    }
    const one = 2 + Math.floor(jointMm(bench, j) / GLUE_WORK.jointClampEveryMm);
    // A back is pressed into each rabbet by a batten of its own.
    const line = j.duty === 'back' ? j.id : endOf(j);
    lines.set(line, Math.max(lines.get(line) ?? 0, one));
  }
  return [...lines.values()].reduce((a, b) => a + b, frame);
}

/** The part whose end or edge is in the joint. */
function endOf(joint: Joint): string {
  const face = joint.side === 'show' || joint.side === 'under';
  return face ? joint.mate : joint.part;
}

/** Clamps along an edge of a length (mm): one at either end, more between, tape between those. */
export function clampsAlong(mm: number): number {
  return 2 + Math.floor(mm / GLUE_WORK.edgeClampEveryMm);
}
