import type { JobDocument, RecordOf } from '../../job/index.ts';
import type { Joinery } from '../set-out.ts';

/**
 * How a case's panels are joined: as its record says, or else by what the shop owns. A pocket-hole jig is the
 * quickest; without one, a router lets panels into dados; a dowelling jig or a biscuit joiner
 * pegs them; a drill alone screws through their faces.
 */
export function joineryOf(job: JobDocument, box: RecordOf<'case'>): Joinery {
  const record = box.id;
  if (box.joints !== undefined) return { record, joints: box.joints };
  const owns = (kind: string) => job.shop.tools.some((t) => t.kind === kind);
  if (owns('pocket-jig'))
    return { record, joints: 'pocket-screws', because: 'the shop has a pocket-hole jig' };
  if (owns('router'))
    return { record, joints: 'dado', because: 'the shop has a router, and no pocket-hole jig' };
  if (owns('dowel-jig'))
    return {
      record,
      joints: 'dowels',
      because: 'the shop has a dowelling jig, and no pocket-hole jig or router',
    };
  if (owns('biscuit-joiner'))
    return {
      record,
      joints: 'biscuits',
      because: 'the shop has a biscuit joiner, and no pocket-hole jig or router',
    };
  return { record, joints: 'face-screws', because: 'the shop has neither a pocket-hole jig nor a router' };
}
