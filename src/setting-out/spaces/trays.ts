import { SETTING_OUT } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft } from '../draft.ts';
import { depthIn, lengthened } from '../joints/let-in.ts';
import { ordinal, type Parting, type Space } from './openings.ts';

/** Thin dividers of an opening for trays: upright, equally spaced, let into dados of what is below and above, however else the case is joined. */
export function trayDividers(draft: Draft, frame: CaseFrame, space: Space, partings: Parting[]): void {
  const record = draft.tree.childOf(space.record.id, 'trays');
  if (!record) return;
  const l = draft.ledger;
  const { above, below } = space;
  if (!above) {
    draft.stop(
      'trays.no-above',
      record,
      'parent',
      `Above “${space.record.id}” lies a top that is laid on last: dividers for trays would have nothing to stand in there.`,
      { says: 'Put a fixed shelf over them, or let the top be “inset”.' },
    );
    return;
  }
  const count = record.count ?? 1;
  const lot = draft.lot(record.board);
  const thickness = draft.thickness(lot);
  const clear = l.less(
    'clear width to share among the places',
    space.size[0],
    l.times('all dividers together', thickness, count),
  );
  if (l.ticks(clear) < (count + 1) * l.ticks(l.row(SETTING_OUT.trayLeast))) {
    draft.stop(
      'trays.no-room',
      record,
      'count',
      `${count === 1 ? 'A divider leaves' : `${count} dividers leave`} places narrower than ${toMm(l.ticks(l.row(SETTING_OUT.trayLeast)))} mm in “${space.record.id}”.`,
      { says: 'Have fewer dividers.', edits: [{ record: record.id, field: 'count', value: 1 }] },
    );
    return;
  }
  const setback = draft.field(record, 'setback');
  const depth = l.less('depth of the divider', space.size[1], setback);
  if (l.ticks(depth) <= 0) {
    draft.stop('trays.no-room', record, 'setback', `“${record.id}” is set back by more than its depth.`, {
      says: 'Set it back less.',
    });
    return;
  }
  const into = (mate: typeof below) =>
    depthIn(draft, 'depth of the dado', mate.thickness, SETTING_OUT.dadoDepth);
  const tongues = { start: into(below), end: into(above) };
  const weights = Array.from({ length: count + 1 }, () => 1);
  let from = space.at[0];
  for (let i = 0; i < count; i++) {
    const x = l.sum('left face of the divider', from, l.share('an equal place', clear, weights, i));
    from = l.sum('right face of the divider', x, thickness);
    const part = draft.panel({
      record: record.id,
      role: `tray:${i + 1}`,
      name: `${ordinal(i + 1)} tray divider${frame.alone && draft.tree.get(space.record.parent)?.kind === 'case' ? '' : ` of ${space.record.id}`}`,
      family: 'divider',
      lot,
      ...lengthened(
        draft,
        [x, l.sum('front of the divider', space.at[1], setback), space.at[2]],
        [thickness, depth, space.size[2]],
        2,
        tongues,
      ),
      tongues,
      length: '+z',
      width: '+y',
      between: true,
    });
    partings.push({
      part,
      upright: true,
      thin: true,
      behind: space.behind ?? false,
      from: below,
      to: above,
      space,
    });
  }
}
