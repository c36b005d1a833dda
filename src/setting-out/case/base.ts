import { SETTING_OUT } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import { type FrameSide, mitredFrame } from './mitred-frame.ts';

/** The frame a case stands on, set back under it. */
export function baseFrame(draft: Draft, frame: CaseFrame): ReadonlyMap<FrameSide, DraftPart> {
  const { base } = frame;
  if (!base || (base.form ?? 'frame') !== 'frame') return new Map();
  const l = draft.ledger;
  const lot = draft.lot(base.board!);
  const thickness = draft.thickness(lot);
  const setback = draft.field(base, 'setback');
  const behind = base.setbackBack === undefined ? setback : draft.field(base, 'setbackBack');
  const height = draft.field(base, 'height');
  const width = l.less('width of the base, set back on both sides', frame.width, setback, setback);
  const depth = l.less('depth of the base, set back in front and behind', frame.depth, setback, behind);
  const two = 2 * l.ticks(thickness);
  if (l.ticks(width) <= two || l.ticks(depth) <= two) {
    draft.stop('base.no-room', base, 'setback', 'The base is set back so far that its strips meet.', {
      says: 'Set it back less.',
      edits: [{ record: base.id, field: 'setback', value: '40 mm' }],
    });
    return new Map();
  }
  const allowance = l.row(SETTING_OUT.mitreAllowance);
  return mitredFrame(draft, {
    record: base.id,
    stem: 'base',
    of: ofCase(frame),
    family: 'base',
    lot,
    at: [
      l.sum('left end of the base', frame.left, setback),
      l.sum('front of the base', frame.front, setback),
      frame.site.floor,
    ],
    size: [width, depth, height],
    thickness,
    sides: ['front', 'left', 'right', 'back'],
    rough: (length) => ({
      length: l.sum('length to cut before mitring', length, allowance, allowance),
      width: height,
      thickness,
    }),
  });
}
