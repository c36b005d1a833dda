import type { RecordOf } from '../../job/index.ts';
import { FIT_LIMITS } from '../../materials/index.ts';
import type { DoorLeaf } from '../doors/door-leaf.ts';
import type { Draft } from '../draft.ts';
import { outerSize } from '../edging/outer-box.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import { betweenOf, type ClearLoops } from './clear-loops.ts';
import { addFit, between, withEdging } from './fit.ts';

/** Inset doors in their openings, across and upward; the two of a pair together across. */
export function fitsOfDoors(
  draft: Draft,
  doors: readonly RecordOf<'door'>[],
  closed: ClosedSpaces,
  loops: ClearLoops,
): void {
  const l = draft.ledger;
  for (const door of doors) {
    const record = door.id;
    const leaves = draft.doors.filter((d) => d.record === record);
    if (door.hang !== 'inset' || leaves.length < (door.count ?? 1)) continue;
    const spaces = door.over
      .map((id) => closed.get(id)!)
      .sort((a, b) => l.ticks(a.at[0]) - l.ticks(b.at[0]) || l.ticks(a.at[2]) - l.ticks(b.at[2]));
    const ends = [spaces[0]!, spaces.at(-1)!] as const;
    const parts = leaves.map((leaf) => draft.part(leaf.part));
    const leaf = leaves[0]!;
    const last = parts.at(-1)!;
    const what = parts.length > 1 ? `the doors of ${door.over[0]}` : `the ${last.name}`;
    addFit(draft, {
      id: `${record}/width`,
      kind: 'door',
      name: `${what} between what ${parts.length > 1 ? 'they hang' : 'it hangs'} between`,
      gap: l.less(
        'all gaps beside the door',
        leaf.opening.width,
        ...parts.map((p) => outerSize(draft, p, 'width')),
      ),
      ...limits(draft, leaf, parts.length + 1),
      loop: [
        ...loops.of(betweenOf('width', ...ends)),
        ...parts.flatMap((p) => withEdging(draft, p, 'width')),
      ],
      faces: [
        ...between(ends[0].left, '+x', ends[1].right, '-x'),
        ...parts.flatMap((p) => between(p, '-x', p, '+x')),
      ],
      toFit: last.id,
    });
    for (const part of parts)
      addFit(draft, {
        id: `${part.id}/height`,
        kind: 'door',
        name: `the ${part.name} between what is below and above it`,
        gap: l.less(
          'both gaps above and below the door',
          leaf.opening.height,
          outerSize(draft, part, 'length'),
        ),
        ...limits(draft, leaf, 2),
        loop: [...loops.of(betweenOf('height', ...ends)), ...withEdging(draft, part, 'length')],
        faces: [...between(ends[0].below, '+z', ends[1].above, '-z'), ...between(part, '-z', part, '+z')],
        toFit: part.id,
      });
  }
}

/** So many gaps together: each as drawn, but for what nobody minds. */
function limits(draft: Draft, { gap }: DoorLeaf, gaps: number) {
  const l = draft.ledger;
  const off = l.row(FIT_LIMITS.doorGap);
  const least = l.greatest('no gap less than nothing', l.less('least gap', gap, off), draft.nothing);
  return {
    least: l.times('least gaps together', least, gaps),
    most: l.times('widest gaps together', l.sum('widest gap', gap, off), gaps),
  };
}
