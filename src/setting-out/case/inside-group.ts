import type { RecordOf } from '../../job/index.ts';
import { asAsked } from '../as-asked.ts';
import type { Draft } from '../draft.ts';
import { finishedThickness } from '../glued/panel-of-boards.ts';
import { type Site, within } from './site.ts';

/** Whether a case reaches the top over a group that it stands in, as drawn. */
export function liesUnderTop(draft: Draft, member: RecordOf<'case' | 'group'>): boolean {
  const group = draft.tree.get(member.parent);
  if (group?.kind !== 'group') return false;
  if (group.lay === 'up' && draft.tree.membersOf(group.id).at(-1) !== member) return false;
  if (group.lay === 'across' && member.height !== undefined) return false;
  return draft.tree.childOf(group.id, 'top') !== undefined || liesUnderTop(draft, group);
}

/** The place that is left for the members of a group, on the base that carries them and under the top that lies over all of them. */
export function insideGroup(draft: Draft, group: RecordOf<'group'>, place: Site): Site {
  const base = draft.tree.childOf(group.id, 'base');
  if (!base) return underTop(draft, group, place);
  const height = draft.field(base, 'height');
  return underTop(
    draft,
    group,
    asAsked<Site>({
      left: () => place.left,
      front: () => place.front,
      floor: () => within(draft, 'underside of the cases, on their base', place.floor, height),
      width: () => place.width,
      height: () => draft.ledger.less('height of the cases, on their base', place.height, height),
      depth: () => place.depth,
    }),
  );
}

function underTop(draft: Draft, group: RecordOf<'group'>, whole: Site): Site {
  const top = draft.tree.childOf(group.id, 'top');
  if (!top) return whole;
  const l = draft.ledger;
  const overhang = (field: 'overhangFront' | 'overhangSides' | 'overhangBack') => draft.field(top, field);
  return asAsked<Site>({
    left: () =>
      within(draft, 'left end of the cases, inside their top', whole.left, overhang('overhangSides')),
    front: () =>
      within(draft, 'front of the cases, inside their top', whole.front, overhang('overhangFront')),
    floor: () => whole.floor,
    width: () =>
      l.less(
        'width of the cases, inside their top',
        whole.width,
        overhang('overhangSides'),
        overhang('overhangSides'),
      ),
    height: () =>
      l.less(
        'height of the cases, under their top',
        whole.height,
        finishedThickness(draft, draft.lot(top.board)),
      ),
    depth: () =>
      l.less(
        'depth of the cases, inside their top',
        whole.depth,
        overhang('overhangFront'),
        overhang('overhangBack'),
      ),
  });
}
