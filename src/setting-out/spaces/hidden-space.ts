import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, Triple } from '../draft.ts';
import type { Parting, Space } from './openings.ts';

/**
 * Parts a space from front to back: a panel parallel to the back between each two of its openings, from side to side
 * and a little lower than the space is high. Returns the openings' spaces, the foremost first; what a door takes of the
 * depth is taken from that one.
 */
export function splitDepth(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  depths: readonly Traced[],
  partings: Parting[],
): readonly Space[] {
  const l = draft.ledger;
  const openings = draft.tree.childrenOf(space.record.id, 'opening');
  const named = draft.tree.childrenOf(space.record.id, 'divider');
  const lots = openings.slice(1).map((_, i) => draft.lot(named[i]?.board ?? frame.box.board));
  const behind = [...lots.map((lot) => draft.thickness(lot)), ...depths.slice(1)];
  const first = l.less('depth before the panel', space.size[1], ...behind);
  if (!draft.isSome(first)) {
    draft.stop(
      'openings.no-room',
      space.record,
      'split',
      `The door before “${space.record.id}” and what is parted off behind leave no depth.`,
      { says: 'Make the space behind shallower, or the piece deeper.' },
    );
    return [];
  }
  let y = space.at[1];
  return openings.map((record, i) => {
    const depth = i === 0 ? first : depths[i]!;
    const here = within(space, record, y, depth);
    const lot = lots[i];
    if (lot) {
      const face = l.sum('front of the panel', y, depth);
      const thickness = draft.thickness(lot);
      partings.push(panelBetween(draft, space, named[i], i, { lot, face, thickness }));
      y = l.sum('back of the panel', face, thickness);
    }
    return here;
  });
}

function within(space: Space, record: RecordOf<'opening'>, y: Traced, depth: Traced): Space {
  return {
    ...space,
    record,
    at: [space.at[0], y, space.at[2]],
    size: [space.size[0], depth, space.size[2]],
  };
}

/** The panel itself, seen from the front: its ends are screwed to what stands left and right of it. */
function panelBetween(
  draft: Draft,
  space: Space,
  record: RecordOf<'divider'> | undefined,
  index: number,
  of: {
    readonly lot: Parameters<Draft['panel']>[0]['lot'];
    readonly face: Traced;
    readonly thickness: Traced;
  },
): Parting {
  const clear = draft.ledger.row(SETTING_OUT.backClear);
  const at: Triple = [space.at[0], of.face, space.at[2]];
  const height = draft.ledger.less('height of the panel, clear of what is above', space.size[2], clear);
  const part = draft.panel({
    record: record?.id ?? space.record.id,
    role: record ? 'divider' : `panel:${index + 1}`,
    name: `panel at the back of ${space.record.id}`,
    family: 'divider',
    lot: of.lot,
    at,
    size: [space.size[0], of.thickness, height],
    length: '+x',
    // The show face looks to the front, and pockets to the hidden side.
    width: '+z',
    between: true,
  });
  return { part, upright: false, behind: true, from: space.left, to: space.right, space };
}
