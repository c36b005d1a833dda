import { treeOf } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { unitsOf } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import { glueFrame } from './glue-frame.ts';
import type { Touch } from './operation.ts';
import { edgingOf, offset } from './seating.ts';
import { setGroup } from './set-group.ts';
import { looks } from './words.ts';

/** A base under several cases, and the assembly that it is until they stand on it. */
export interface BaseUnderCases {
  readonly name: string;
  readonly strips: readonly Part[];
}

/** Glues the bases that carry several cases together; they wait until those stand. */
export function glueBases(bench: Bench): readonly BaseUnderCases[] {
  const tree = treeOf(bench.job);
  return tree.all('base').flatMap((record): BaseUnderCases[] => {
    if (tree.get(record.parent)?.kind !== 'group') return [];
    const strips = bench.setOut.parts.filter((p) => p.record === record.id);
    if (strips.length === 0) return [];
    const name = `base:${record.parent}`;
    glueFrame(bench, name, `base of “${record.parent}”`, strips);
    return [{ name, strips }];
  });
}

/** Sets the cases on their base, and screws their bottoms down on it. */
export function setOnBase(bench: Bench, into: string, { name, strips }: BaseUnderCases): void {
  const l = bench.ledger;
  const own = new Set(strips.map((s) => s.id));
  const joints = bench.setOut.joints.filter((j) => j.duty === 'base' && (own.has(j.part) || own.has(j.mate)));
  const first = joints[0]!;
  const on = own.has(first.part) ? first.mate : first.part;
  const box = unitsOf(bench)
    .flatMap((unit) => unit.boxes)
    .find((b) => b.parts.some((p) => p.id === on))!;
  const bottom = planesOf(l, box.parts.find((p) => p.id === on)!);
  const side = planesOf(l, box.left);
  const front = strips.find((s) => looks(s, 'show') === '-y')!;
  const left = strips.find((s) => looks(s, 'show') === '-x')!;
  const edging = edgingOf(bench, bottom.part, '-y');
  const foremost = edging ? planesOf(l, edging) : bottom;
  const touches: readonly [Touch, Touch, Touch] = [
    { ...offset(bench, planesOf(l, left), '-x', side), part: left.mark },
    { ...offset(bench, planesOf(l, front), '-y', foremost), part: front.mark },
    { part: front.mark, side: '+z', of: bottom.part.mark, face: '-z' },
  ];
  setGroup(
    bench,
    into,
    name,
    `Set the cases on the base ${front.mark} belongs to`,
    touches,
    [
      'The base stands level, packed where the floor is low: a straightedge along its front strip and across it, and a level on that. The cases are lifted on to it, joined as they are or one after the other.',
    ],
    { length: '+x', width: '+y' },
  );
  for (const j of joints) driveScrews(bench, into, j);
}
