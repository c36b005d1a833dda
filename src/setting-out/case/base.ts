import type { Draft, DraftPart } from '../draft.ts';
import { type CaseFrame, ofCase } from './frame-of-case.ts';
import type { FrameSide } from './mitred-frame.ts';
import { setBackFrame } from './set-back-frame.ts';

/** The frame a case stands on, set back under it. */
export function baseFrame(draft: Draft, frame: CaseFrame): ReadonlyMap<FrameSide, DraftPart> {
  const { base } = frame;
  if (!base || (base.form ?? 'frame') !== 'frame') return new Map();
  const { left, front, width, depth, site } = frame;
  return setBackFrame(draft, base, { left, front, width, depth, floor: site.floor, of: ofCase(frame) });
}
