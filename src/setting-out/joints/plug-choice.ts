import type { RecordOf } from '../../job/index.ts';
import { FACE_SCREWS } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';

/** A plug of the rack, and the hole that is sunk for it. */
export interface ChosenPlug {
  readonly plug: string;
  readonly diameter: Traced;
  readonly depth: Traced;
}

/** Whether plugs are wanted, and whether the maker asked for them. */
export interface PlugWish {
  readonly wanted: boolean;
  readonly asked: boolean;
}

/**
 * The plugs that hold in a part, those on the rack before those to be bought, narrower ones first. The hole is a third
 * of the part deep, less where the plug is shorter; in a part too thin for that none holds.
 */
export function plugsFor(draft: Draft, part: DraftPart): readonly ChosenPlug[] {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const third = l.ratio('a third of the board for the plug', part.thickness, FACE_SCREWS.plugDepth);
  return (draft.job.shop.rack.fixings ?? [])
    .filter((f) => f.kind === 'plug')
    .map((plug) => {
      const size = (field: 'diameter' | 'length') =>
        draft.typed(`shop/rack/fixings/${plug.id}/${field}`, plug[field]);
      const longest = l.less('as deep as the plug reaches', size('length'), l.row(FACE_SCREWS.plugProud));
      const depth = l.round(
        'as fine as the drill is set',
        l.least('depth of the hole for the plug', third, longest),
        draft.stepOf('drill'),
        'down',
      );
      return { plug: plug.id, owned: (plug.have ?? 0) > 0, diameter: size('diameter'), depth };
    })
    .filter(({ depth }) => t(depth) >= t(l.row(FACE_SCREWS.plugLeast)))
    .sort(
      (a, b) =>
        Number(b.owned) - Number(a.owned) || t(a.diameter) - t(b.diameter) || (a.plug < b.plug ? -1 : 1),
    );
}

/** Whether heads that are seen are to be plugged: as the case says, or else where there is a plug on the rack. */
export function plugWish(draft: Draft, box: RecordOf<'case'>): PlugWish {
  if (box.heads !== undefined) return { wanted: box.heads === 'plugged', asked: box.heads === 'plugged' };
  const owned = (draft.job.shop.rack.fixings ?? []).some((f) => f.kind === 'plug' && (f.have ?? 0) > 0);
  return { wanted: owned, asked: false };
}
