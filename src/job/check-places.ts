import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import { FROM_SIDES } from './records/on-panel.ts';
import type { RecordTree } from './tree.ts';

/** Whether what stands on a panel says which panel, and its place along each way once at most. */
export function badPlaces(record: RecordOf<'cable' | 'vent'>, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [];
  const say = (code: string, field: string, sentence: string, cure: string) =>
    snags.push({
      code,
      level: 'stop',
      where: { path: `design/records/${record.id}/${field}`, record: record.id },
      sentence,
      cures: [{ says: cure }],
    });
  const parent = tree.get(record.parent);
  if (parent?.kind === 'case' && record.panel === undefined)
    say(
      'design.which-panel',
      'panel',
      `“${record.id}” belongs to a case, but not to one of its panels.`,
      'Add “panel”: “left-side”, “right-side”, “bottom” or “lid”.',
    );
  if (parent && parent.kind !== 'case' && record.panel !== undefined)
    say(
      'design.which-panel',
      'panel',
      `“${record.id}” belongs to “${parent.id}”, which is a panel itself.`,
      'Take “panel” out, or let it belong to the case.',
    );
  if (record.in !== undefined && tree.get(record.in)?.kind !== 'opening')
    say(
      'document.no-such-record',
      'in',
      `“${record.id}” stands in “${record.in}”, which is no opening.`,
      `Add an opening “${record.in}”, or name one that is there.`,
    );
  for (const [low, high] of FROM_SIDES)
    if (record[low] !== undefined && record[high] !== undefined)
      say(
        'design.placed-twice',
        high,
        `“${record.id}” has its place both by “${low}” and by “${high}”.`,
        'Keep one of the two.',
      );
  if (record.kind === 'vent' && record.heat === undefined && record.count === undefined)
    say(
      'design.vent-size',
      'heat',
      `“${record.id}” says neither what heat it is for nor how many openings it has.`,
      'Add “heat”, such as “60 W”, or “count”.',
    );
  return snags;
}
