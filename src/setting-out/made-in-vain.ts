import { nearestNames } from '../snag/index.ts';
import type { Draft } from './draft.ts';
import { partsAndBoards } from './parts-to-cut.ts';

/** Parts that are said to be cut, and are not in the piece. */
export function madeInVain(draft: Draft): void {
  // What can't be set out has no parts to be known by.
  if (draft.parts.length === 0) return;
  const ids = new Set(partsAndBoards(draft).map((p) => p.id));
  (draft.job.work.made ?? []).forEach(({ part }, i) => {
    if (ids.has(part)) return;
    draft.snags.push({
      code: 'work.no-such-part',
      level: 'mind',
      where: { path: `work/made/${i}/part` },
      sentence: `“${part}” is said to be cut, but no part of the piece is called that.`,
      cures: [
        {
          says: `Nearest: ${nearestNames(part, ids)
            .map((n) => `“${n}”`)
            .join(', ')}. If the drawing no longer has it, put it on the rack as an offcut.`,
        },
      ],
    });
  });
}
