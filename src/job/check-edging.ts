import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';

/** What may have edging, and which of its sides. */
const SIDES: Partial<Record<string, readonly string[]>> = {
  door: ['left', 'right', 'upper', 'lower'],
  drawers: ['left', 'right', 'upper', 'lower'],
  case: ['front', 'left', 'right', 'upper'],
};

/** Each side is named once, and is one that what is edged has; of loose shelves only the front edge is seen. */
export function badEdging(edging: RecordOf<'edging'>, tree: RecordTree): readonly Snag[] {
  const { sides } = edging;
  if (sides === undefined) return [];
  const parent = tree.get(edging.parent);
  const of = SIDES[parent?.kind ?? ''];
  const wrong = of && sides.find((side) => !of.includes(side));
  const twice = new Set(sides).size < sides.length;
  if (of && !wrong && !twice) return [];
  const say = (sentence: string, says: string): readonly Snag[] => [
    {
      code: 'edging.sides',
      level: 'stop',
      where: { path: `design/records/${edging.id}/sides`, record: edging.id },
      sentence,
      cures: [{ says }],
    },
  ];
  if (!of)
    return say(
      `“${edging.id}” runs along front edges: only that of a case, a door or drawers has sides.`,
      'Leave “sides” out.',
    );
  if (wrong)
    return say(
      `“${edging.id}” names “${wrong}”, a side that “${edging.parent}” doesn’t have edged.`,
      `Its sides are: ${of.join(', ')}.`,
    );
  return say(`“${edging.id}” names a side twice.`, 'Name each side once.');
}
