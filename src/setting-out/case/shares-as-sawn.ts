import { type RecordOf, runsPast } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { joineryOf } from '../joints/joinery.ts';
import { intoCorner } from '../joints/let-in.ts';
import { isMitred } from './corners.ts';
import { sidesOfCase } from './shared-sides.ts';

/** What stands in a row, how wide it is drawn, and whether that was left to be shared out. */
export interface Shared {
  readonly member: RecordOf<'case' | 'group' | 'filler'>;
  readonly size: Traced;
  readonly free: boolean;
}

/**
 * Widths of a row whose cases have sides in common, or a top or a base that is bored for all of them, so that the panels across each
 * case are as long as the saw is set: what each loses by that the next one gets, and the last the rest. Rounded one by one, all
 * of them would come out too narrow together.
 */
export function sharesAsSawn(draft: Draft, row: readonly Shared[]): readonly Traced[] {
  const l = draft.ledger;
  const last = row.findLastIndex((r) => r.free && r.member.kind === 'case');
  let drawn: Traced | undefined;
  let given: Traced | undefined;
  return row.map(({ member, size, free }, i) => {
    if (!free || member.kind !== 'case') return size;
    const plus = (so: Traced | undefined, more: Traced, says: string) =>
      so === undefined ? more : l.sum(says, so, more);
    drawn = plus(drawn, size, 'shares up to here');
    const left = given === undefined ? drawn : l.less('what is left of them for this one', drawn, given);
    if (i === last) return left;
    const { sides, tongues } = besidePanel(draft, member);
    const between = sides.length === 0 ? left : l.less('width of the case between its sides', left, ...sides);
    const long =
      tongues.length === 0 ? between : l.sum('length of what goes into the sides', between, ...tongues);
    const sawn = draft.asSawn(long, 'nearest');
    const clear = tongues.length === 0 ? sawn : l.less('between the sides, as it is sawn', sawn, ...tongues);
    const own =
      sides.length === 0 ? clear : l.sum('width of the case, as its panels are sawn', clear, ...sides);
    given = plus(given, own, 'given to those before');
    return own;
  });
}

/** Is there a top or a base that is bored for all cases of a group, or of one that it stands in? */
export function isBoredFor(draft: Draft, group: RecordOf<'group'>): boolean {
  const { tree } = draft;
  if (tree.childOf(group.id, 'top') || tree.childOf(group.id, 'base')) return true;
  const around = tree.get(group.parent);
  return around?.kind === 'group' && isBoredFor(draft, around);
}

/** True for a case whose neighbours, or a top or a base, rest on how wide it comes out. */
export function standsInStep(draft: Draft, box: RecordOf<'case'>): boolean {
  const { left, right } = sidesOfCase(draft, box);
  if (left.shared || right.shared) return true;
  const group = draft.tree.get(box.parent);
  return group?.kind === 'group' && isBoredFor(draft, group);
}

/** What stands beside the bottom of a case that ends between its sides, and what of it goes into these. */
function besidePanel(
  draft: Draft,
  box: RecordOf<'case'>,
): { readonly sides: readonly Traced[]; readonly tongues: readonly Traced[] } {
  const joinery = joineryOf(draft.job, box);
  const { joints } = joinery;
  const own = sidesOfCase(draft, box);
  const ends = (['left', 'right'] as const).filter(
    (hand) => !isMitred({ joints }) && !runsPast(box, 'bottom', hand),
  );
  const thick = (hand: 'left' | 'right') => draft.thickness(draft.lot(own[hand].of.board));
  return {
    sides: ends.map(thick),
    tongues: ends.flatMap(
      (hand) => intoCorner(draft, { joints, joinery }, thick(hand), own[hand].shared) ?? [],
    ),
  };
}
