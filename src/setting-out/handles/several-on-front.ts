import type { RecordOf } from '../../job/index.ts';
import { HANDLES } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type Axis, axisOf } from '../place.ts';
import type { FrontPart } from './front-part.ts';
import { rowOn } from './places-on-front.ts';

type OnFront = RecordOf<'handle' | 'pull'>;

/** Whether the handles of a front, each `size` long along their row, leave room for fingers between them; a stop says where they don't. */
export function standApart(
  draft: Draft,
  record: OnFront,
  front: FrontPart,
  middles: readonly (readonly [x: Traced, z: Traced])[],
  size: Traced,
): boolean {
  const l = draft.ledger;
  const i = rowOn(record, front) === 'across' ? 0 : 1;
  const least = l.ticks(size) + l.ticks(l.row(HANDLES.between));
  const near = middles.some((at, j) => j > 0 && l.ticks(at[i]) - l.ticks(middles[j - 1]![i]) < least);
  if (!near) return true;
  const mm = `${Math.ceil(toMm(least))} mm`;
  draft.stop(
    'handles.too-near',
    record,
    record.apart === undefined ? 'count' : 'apart',
    `${record.count} of “${record.id}” on the ${front.part.name} leave no room for fingers between them.`,
    {
      says: `Set them ${mm} apart at least, middle to middle, make them shorter, or have fewer.`,
      ...(record.apart === undefined ? {} : { edits: [{ record: record.id, field: 'apart', value: mm }] }),
    },
  );
  return false;
}

/**
 * Has holes marked from the middle of their board, where they stand alike to both sides of it: those among its features from the
 * one numbered `from` on. Of one handle alone it may be the middle both ways, of a row the way that it runs.
 */
export function markFromMiddle(
  draft: Draft,
  record: OnFront,
  front: FrontPart,
  part: DraftPart,
  from: number,
): void {
  const l = draft.ledger;
  const bored = part.features.slice(from);
  const isRow = (record.count ?? 1) > 1;
  const axes: readonly Axis[] = !isRow ? [0, 2] : rowOn(record, front) === 'across' ? [0] : [2];
  const middle = (['length', 'width'] as const).filter((run, i) => {
    if (!axes.includes(axisOf(part.place[run]).axis)) return false;
    const at = bored.flatMap((f) => (f.kind === 'hole' ? [l.ticks(f.at[i as 0 | 1])] : []));
    // An odd number of ticks has its half rounded.
    return at.every((a) => at.some((b) => Math.abs(a + b - l.ticks(part[run])) <= 1));
  });
  if (middle.length === 0) return;
  part.features.splice(from, bored.length, ...bored.map((f) => (f.kind === 'hole' ? { ...f, middle } : f)));
}
