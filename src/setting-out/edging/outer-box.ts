import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { axisOf, type TracedBox } from '../place.ts';

/** The box of a board together with the strips on its edges: where a maker measures from. */
export function outerBox(draft: Draft, board: DraftPart): TracedBox {
  const strips = draft.edged.get(board.id);
  if (!strips) return board.box;
  const { min, max } = board.box;
  return {
    min: [strips.get('left')?.box.min[0] ?? min[0], min[1], strips.get('lower')?.box.min[2] ?? min[2]],
    max: [strips.get('right')?.box.max[0] ?? max[0], max[1], strips.get('upper')?.box.max[2] ?? max[2]],
  };
}

/** A size of a board with the strips at both ends of it. */
export function outerSize(draft: Draft, board: DraftPart, size: 'length' | 'width'): Traced {
  const strips = stripsAlong(draft, board, size);
  if (strips.length === 0) return board[size];
  return draft.ledger.sum('with its edging', board[size], ...strips.map((s) => s.thickness));
}

/** The strips that add to a size of a board. */
export function stripsAlong(draft: Draft, board: DraftPart, size: 'length' | 'width'): readonly DraftPart[] {
  const { axis } = axisOf(board.place[size]);
  return [...(draft.edged.get(board.id)?.values() ?? [])].filter(
    (s) => axisOf(s.place.thickness).axis === axis,
  );
}
