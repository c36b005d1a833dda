import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** Whether a handle’s or a pull’s place is said once, and its doors have nothing else to push them by. */
export function badHandle(record: RecordOf<'handle' | 'pull'>, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [];
  const say = (code: string, field: string, sentence: string, cure: string) =>
    snags.push(wrongField(record, code, field, sentence, cure));
  const parent = tree.get(record.parent);
  if (record.fromBelow !== undefined && record.fromAbove !== undefined)
    say(
      'design.placed-twice',
      'fromAbove',
      `“${record.id}” has its place both by “fromBelow” and by “fromAbove”.`,
      'Keep one of the two.',
    );
  if (parent?.kind === 'drawers' && record.fromEdge !== undefined)
    say(
      'design.handle-place',
      'fromEdge',
      `“${record.id}” stands on drawers, which open by no edge: it stands half way across.`,
      'Take “fromEdge” out.',
    );
  if (parent?.kind === 'sliding-doors' && parent.fingerHole !== undefined)
    say(
      'design.handle-place',
      'parent',
      `The doors of “${parent.id}” have finger holes, and “${record.id}” would stand there as well.`,
      'Keep the handles, or the finger holes.',
    );
  if (record.kind === 'pull' && parent && tree.childOf(parent.id, 'handle'))
    say(
      'design.handle-place',
      'parent',
      `“${parent.id}” has shop-made handles, and “${record.id}” would stand there as well.`,
      'Keep one of the two.',
    );
  return snags;
}
