import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type FrameSide, mitredFrame } from './mitred-frame.ts';

/** What a base stands under: one case, or all of a row. */
export interface Carried {
  readonly left: Traced;
  readonly front: Traced;
  readonly width: Traced;
  readonly depth: Traced;
  readonly floor: Traced;
  /** What follows the names of the strips: ` of sideboard`, or nothing. */
  readonly of: string;
}

/** A mitred frame set back under what it carries; empty, with a stop, where that leaves no room between its strips. */
export function setBackFrame(
  draft: Draft,
  base: RecordOf<'base'>,
  { left, front, floor, of, ...carried }: Carried,
): ReadonlyMap<FrameSide, DraftPart> {
  const l = draft.ledger;
  const lot = draft.lot(base.board!);
  const thickness = draft.thickness(lot);
  const setback = draft.field(base, 'setback');
  const behind = base.setbackBack === undefined ? setback : draft.field(base, 'setbackBack');
  const height = draft.field(base, 'height');
  const width = l.less('width of the base, set back on both sides', carried.width, setback, setback);
  const depth = l.less('depth of the base, set back in front and behind', carried.depth, setback, behind);
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
    of,
    family: 'base',
    lot,
    at: [l.sum('left end of the base', left, setback), l.sum('front of the base', front, setback), floor],
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
