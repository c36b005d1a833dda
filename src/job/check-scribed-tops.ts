import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** A top that is scribed runs over fillers to their walls, and nothing of it is in the way there. */
export function badScribe(top: RecordOf<'top'>, tree: RecordTree): readonly Snag[] {
  if (top.scribe === undefined) return [];
  const say = (field: string, sentence: string, cure: string) => [
    wrongField(top, 'design.top-scribe', field, sentence, cure),
  ];
  if (walledEnds(top, tree).length === 0)
    return say(
      'scribe',
      `“${top.id}” is to be scribed to a wall, but no filler closes the row under it to one.`,
      'Let it belong to a group with a filler at an end of its row, or take “scribe” out.',
    );
  if (top.overhangSides !== undefined)
    return say(
      'overhangSides',
      `“${top.id}” is scribed to a wall, so it stands out beyond nothing there.`,
      'Take “overhangSides” out.',
    );
  if (top.edging !== undefined && top.edgedSides !== 'front')
    return say(
      'edgedSides',
      `“${top.id}” is scribed at its ends, so they can’t be edged.`,
      'Let “edgedSides” be “front”.',
    );
  return [];
}

/** The ends of a top at which a filler closes its row to a wall. */
export function walledEnds(top: RecordOf<'top'>, tree: RecordTree): readonly ('left' | 'right')[] {
  const group = tree.get(top.parent);
  if (group?.kind !== 'group' || group.lay !== 'across') return [];
  const row = tree.rowOf(group.id);
  return [
    ...(row[0]?.kind === 'filler' ? (['left'] as const) : []),
    ...(row.length > 1 && row.at(-1)?.kind === 'filler' ? (['right'] as const) : []),
  ];
}
