import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** Sides are named of doors and drawers alone: of panels and loose shelves only the front edge is seen. */
export function badEdging(edging: RecordOf<'edging'>, tree: RecordTree): readonly Snag[] {
  if (edging.sides === undefined) return [];
  const parent = tree.get(edging.parent);
  const round = parent?.kind === 'door' || parent?.kind === 'drawers';
  const twice = new Set(edging.sides).size < edging.sides.length;
  if (round && !twice) return [];
  return [
    {
      code: 'edging.sides',
      level: 'stop',
      where: { path: `design/records/${edging.id}/sides`, record: edging.id },
      sentence: round
        ? `“${edging.id}” names a side twice.`
        : `“${edging.id}” runs along front edges: only that of a door or of drawers has sides.`,
      cures: [{ says: round ? 'Name each side once.' : 'Leave “sides” out.' }],
    },
  ];
}
