import { SETTING_OUT } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { CasePanels } from './case-panels.ts';
import type { Draft, DraftPart } from './draft.ts';
import type { CaseFrame } from './frame-of-case.ts';
import type { Direction } from './place.ts';

/** The back panel, and the rabbets that take it where it is let in. */
export function backPanel(draft: Draft, frame: CaseFrame, panels: CasePanels): DraftPart | undefined {
  const { back } = frame;
  if (!back) return undefined;
  const l = draft.ledger;
  const lot = draft.lot(back.board);
  const clear = l.row(SETTING_OUT.backClear);
  const front = l.sum('front of the back panel', frame.panelFront, frame.insideDepth);
  const height = l.less('height of the back, clear of the top', frame.uprightHeight, clear);
  const common = {
    record: back.id,
    role: 'back',
    name: 'back',
    family: 'back' as const,
    lot,
    ...grainOfBack(draft, back.board, frame.uprightHeight, frame.width),
  };
  if (back.fitting === 'applied') {
    return draft.panel({
      ...common,
      at: [frame.left, front, frame.foot],
      size: [frame.width, frame.backThickness, height],
    });
  }
  const deep = l.ratio('depth of the rabbet', frame.board, SETTING_OUT.rabbetDepth);
  const depth = l.round('as fine as the router is set', deep, draft.stepOf('router'), 'down');
  for (const side of [panels.left, panels.right])
    side.features.push({
      kind: 'rabbet',
      id: `${side.id}#${back.id}`,
      purpose: 'for the back',
      face: 'under',
      edge: side === panels.left ? 'far' : 'near',
      width: frame.backRoom,
      depth,
      from: draft.nothing,
      to: side.length,
    });
  const left = l.less('bottom of the left rabbet', panels.inside.left, depth);
  return draft.panel({
    ...common,
    at: [l.sum('left edge of the back, clear of its rabbet', left, clear), front, frame.foot],
    size: [
      l.less(
        'width of the back, clear of both rabbets',
        l.sum('width between the rabbets', panels.inside.width, depth, depth),
        clear,
        clear,
      ),
      frame.backThickness,
      height,
    ],
    between: true,
  });
}

/** The grain stands upright where a sheet is wide enough for that, and lies along otherwise; the show face looks inside. */
function grainOfBack(
  draft: Draft,
  lotId: string,
  height: Traced,
  width: Traced,
): { readonly length: Direction; readonly width: Direction } {
  const l = draft.ledger;
  const path = (stock: string, field: string) => `shop/rack/lots/${lotId}/stock/${stock}/${field}`;
  const upright = draft
    .lot(lotId)
    .stock.some(
      (s) =>
        l.ticks(draft.typed(path(s.id, 'length'), s.length)) >= l.ticks(height) &&
        l.ticks(draft.typed(path(s.id, 'width'), s.width!)) >= l.ticks(width),
    );
  return upright ? { length: '+z', width: '-x' } : { length: '+x', width: '+z' };
}
