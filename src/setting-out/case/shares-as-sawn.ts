import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { sidesOfCase } from './shared-sides.ts';

/** What stands in a row, how wide it is drawn, and whether that was left to be shared out. */
export interface Shared {
  readonly member: RecordOf<'case' | 'group' | 'filler'>;
  readonly size: Traced;
  readonly free: boolean;
}

/**
 * Widths of a row whose cases have sides in common, so that what lies between these is as long as the saw is set: what each loses
 * by that the next one gets, and the last the rest. Rounded one by one, all of them would come out too narrow together.
 */
export function sharesAsSawn(draft: Draft, row: readonly Shared[]): readonly Traced[] {
  const l = draft.ledger;
  const last = row.findLastIndex((r) => r.free);
  let drawn: Traced | undefined;
  let given: Traced | undefined;
  return row.map(({ member, size, free }, i) => {
    if (!free || member.kind !== 'case') return size;
    const plus = (so: Traced | undefined, more: Traced, says: string) =>
      so === undefined ? more : l.sum(says, so, more);
    drawn = plus(drawn, size, 'shares up to here');
    const left = given === undefined ? drawn : l.less('what is left of them for this one', drawn, given);
    if (i === last) return left;
    const { left: one, right: other } = sidesOfCase(draft, member);
    const sides = [one, other].map((s) => draft.thickness(draft.lot(s.of.board)));
    const clear = draft.asSawn(l.less('clear width between the sides', left, ...sides), 'nearest');
    const own = l.sum('width of the case, as its panels are sawn', clear, ...sides);
    given = plus(given, own, 'given to those before');
    return own;
  });
}
