import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, PanelSpec } from '../draft.ts';

/** What fits an opening is cut when that can be measured; until then it is larger. */
export function leftLarger(
  draft: Draft,
  width: Traced,
  height: Traced,
  thickness: Traced,
): Required<Pick<PanelSpec, 'rough' | 'cutLater'>> {
  const l = draft.ledger;
  const more = l.row(SETTING_OUT.cutLaterAllowance);
  return {
    rough: {
      length: l.sum('height to cut before the opening is measured', height, more),
      width: l.sum('width to cut before the opening is measured', width, more),
      thickness,
    },
    cutLater: true,
  };
}
