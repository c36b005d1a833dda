import type { DoorwaySize } from '../../job/index.ts';
import { WAY } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** A size of the doorways that a piece is carried through: of several, the least. */
export function doorwaySize(draft: Draft, doors: readonly string[], size: DoorwaySize): Traced {
  const l = draft.ledger;
  const field = size === 'height' ? 'height' : 'width';
  const all = draft.job.shop.wayHome?.doors ?? [];
  const typed = doors.map((id) =>
    draft.typed(`shop/wayHome/doors/${id}/${field}`, all.find((d) => d.id === id)![field]),
  );
  const least = typed.length === 1 ? typed[0]! : l.least(`least ${field} of the doorways`, ...typed);
  if (size !== 'through') return least;
  const hands = l.row(WAY.hands);
  return l.less('what goes through, with room for hands', least, hands, hands);
}
