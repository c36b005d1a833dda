import { BASES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { axisOf } from '../place.ts';
import type { CasePanels } from './case-panels.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { levellerOf } from './levellers.ts';

/**
 * What the skirting of the wall asks of a case: sides that run to the floor are notched for it, and a base that is not set
 * back so far keeps the case off the wall.
 */
export function skirting(draft: Draft, frame: CaseFrame, panels: CasePanels): void {
  const { piece } = draft;
  const { base } = frame;
  if (piece.skirtingDepth === undefined || piece.skirtingHeight === undefined) return;
  const l = draft.ledger;
  const [high, deep] = [draft.field(piece, 'skirtingHeight'), draft.field(piece, 'skirtingDepth')];
  const clear = l.row(BASES.skirtingClear);
  const over = l.sum('height that clears the skirting', high, clear);
  const behind = l.sum('depth that clears the skirting', deep, clear);
  // Cases on a base of their group stand above the floor already.
  const lifted = l.ticks(frame.site.floor) + l.ticks(frame.baseHeight);
  if (lifted === 0 || l.ticks(over) > lifted) {
    tooHigh(draft, frame);
    return;
  }
  if (!base) return;
  if (base.form === 'toe-kick') {
    for (const side of [panels.left, panels.right].filter((s) => s.record === frame.box.id))
      side.features.push({
        kind: 'notch',
        id: `${side.id}#skirting`,
        purpose: 'to clear the skirting',
        end: 'start',
        edge: axisOf(side.place.width).sign > 0 ? 'far' : 'near',
        length: l.round('as fine as it is marked', over, draft.stepOf('marking'), 'up'),
        width: l.round('as fine as it is marked', behind, draft.stepOf('marking'), 'up'),
      });
    return;
  }
  const set = behindBase(draft, base);
  if (l.ticks(set) < l.ticks(behind))
    draft.snags.push({
      code: 'base.skirting',
      level: 'mind',
      where: { path: `design/records/${base.id}/setbackBack`, record: base.id },
      sentence: `The base meets a skirting of ${piece.skirtingDepth} before the case meets the wall.`,
      cures: [
        {
          says: 'Set it back behind by more than the skirting is deep.',
          edits: [{ record: base.id, field: 'setbackBack', value: `${piece.skirtingDepth} + ${CLEAR}` }],
        },
      ],
    });
}

/** How far the base stays inside the back of its case. */
function behindBase(draft: Draft, base: NonNullable<CaseFrame['base']>): Traced {
  const l = draft.ledger;
  const set =
    base.setbackBack !== undefined
      ? draft.field(base, 'setbackBack')
      : base.setback === undefined && (base.form === 'feet' || base.form === 'levellers')
        ? l.row(BASES.footSetback)
        : draft.field(base, 'setback');
  // Levellers are set back to their middles.
  const leveller = base.form === 'levellers' ? levellerOf(draft, base) : undefined;
  if (!leveller) return set;
  const width = draft.typed(`shop/rack/fixings/${leveller.id}/width`, leveller.width);
  return l.less('behind the foot of a leveller', set, l.ratio('half of it', width, SETTING_OUT.half));
}

const CLEAR = '5 mm';

function tooHigh(draft: Draft, { base, box }: CaseFrame): void {
  const { piece } = draft;
  draft.snags.push({
    code: 'base.skirting',
    level: 'mind',
    where: { path: `design/records/${base?.id ?? box.id}`, record: base?.id ?? box.id },
    sentence: `A skirting ${piece.skirtingHeight} high reaches above the base, so the case stands ${piece.skirtingDepth} off the wall.`,
    cures: [{ says: 'Make the base higher than the skirting, or close the gap with a scribed strip.' }],
  });
}
