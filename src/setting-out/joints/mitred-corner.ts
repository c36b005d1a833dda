import type { RecordOf } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';

/** A mitred corner of a case, and which ends of its two panels meet there. */
export interface MitredCorner {
  readonly joint: string;
  readonly box: RecordOf<'case'>;
  readonly side: DraftPart;
  readonly sideEnd: 'start' | 'end';
  readonly flat: DraftPart;
  readonly flatEnd: 'start' | 'end';
}

/** Where the inner arris of a corner lies, and which way along x and z the outside is. */
export interface InnerArris {
  readonly at: readonly [Traced, Traced, Traced];
  readonly sign: readonly [1 | -1, 0, 1 | -1];
}

/** The inner arris of a corner. */
export function innerArris({ side, sideEnd, flat, flatEnd }: MitredCorner): InnerArris {
  const left = flatEnd === 'start';
  const lower = sideEnd === 'start';
  return {
    at: [
      left ? side.box.max[0] : side.box.min[0],
      side.box.min[1],
      lower ? flat.box.max[2] : flat.box.min[2],
    ],
    sign: [left ? -1 : 1, 0, lower ? -1 : 1],
  };
}

/** The face of a panel that a mitre of its end makes shorter. */
export function innerFace(part: DraftPart, end: 'start' | 'end'): Face {
  const bevel = part.features.find((f) => f.kind === 'bevel' && f.edge === end);
  return bevel?.kind === 'bevel' && bevel.fullFace === 'show' ? 'under' : 'show';
}
