import { applyEdit, editOfCure, type JobDocument } from '../job/index.ts';
import { density } from '../materials/index.ts';
import { type SetOut, setOut } from '../setting-out/index.ts';
import type { CureEdit } from '../snag/index.ts';
import type { CheckInput, Weighed } from './check-input.ts';
import { standingBoxes } from './standing-boxes.ts';

/**
 * The piece after a cure's edits, its parts weighed as plain boxes; undefined when the edits are refused or set out
 * with a snag that wasn't there before. A check tries its cures by it before it offers them.
 */
export function tryEdits(
  job: JobDocument,
  now: SetOut,
  edits: readonly CureEdit[],
): Pick<CheckInput, 'job' | 'setOut' | 'weigh'> | undefined {
  const edited = applyEdit(job, editOfCure(edits));
  if (!edited.ok) return undefined;
  const after = setOut(edited.job);
  const before = new Set(now.snags.map((s) => s.code));
  if (!after.snags.every((s) => before.has(s.code))) return undefined;
  return { job: edited.job, setOut: after, weigh: asBoxes(edited.job, after) };
}

function asBoxes(job: JobDocument, out: SetOut): (partId: string) => Weighed {
  const boxes = standingBoxes(out);
  const kgM3 = new Map(job.shop.rack.lots.map((l) => [l.id, density(l.material)?.kgM3 ?? 0]));
  const lots = new Map(out.parts.map((p) => [p.id, p.lot]));
  return (id) => {
    const { min, max } = boxes.get(id)!;
    const mm3 = (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
    return {
      kg: (mm3 * (kgM3.get(lots.get(id) ?? '') ?? 0)) / 1e9,
      centreMm: [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2],
    };
  };
}
