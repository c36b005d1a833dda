import type { CaseJoints, JobDocument, RecordOf } from '../../job/index.ts';
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

/** A reason of a number that comes out as it does because of how the panels are joined: with why so, where that was not asked for. */
export function becauseOf(what: string, { because }: Joinery): string {
  return because === undefined ? what : `${what}; joined so because ${because}`;
}

/** What the panels of a case are joined by. */
export const JOINED_BY: Record<CaseJoints, string> = {
  'pocket-screws': 'pocket screws',
  'face-screws': 'screws through their faces',
  rabbet: 'rabbets at the corners, and pocket screws',
  dado: 'dados and glue',
  'stopped-dado': 'stopped dados and glue',
  tongue: 'tongues in dados, and glue',
  dowels: 'dowels and glue',
  biscuits: 'biscuits and glue',
  mitre: 'mitres at the corners',
};

/** The reason of a clear size that panels are cut to where they butt, rather than go in: told where butting was not asked for. */
export function buttedBetween(what: string, { joints, because }: Joinery): string {
  // Of the ways that follow from the tools dados alone let panels in; those tell it of their depth.
  if (because === undefined || joints === 'dado') return what;
  return `${what}; panels butt there, joined by ${JOINED_BY[joints]} because ${because}`;
}
