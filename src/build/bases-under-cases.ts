import { treeOf } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';
import { baseJoints, baseTouches } from './base-touches.ts';
import type { Bench } from './bench.ts';
import { unitsOf } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import { glueFrame } from './glue-frame.ts';
import { markWords } from './mark-words.ts';
import { setGroup } from './set-group.ts';

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
export function setOnBase(
  bench: Bench,
  into: string,
  { name, strips }: BaseUnderCases,
  lifted: readonly Part[],
): void {
  const own = new Set(strips.map((s) => s.id));
  const joints = baseJoints(bench, strips);
  const first = joints[0]!;
  const on = own.has(first.part) ? first.mate : first.part;
  const box = unitsOf(bench)
    .flatMap((unit) => unit.boxes)
    .find((b) => b.parts.some((p) => p.id === on))!;
  const bottom = box.parts.find((p) => p.id === on)!;
  setGroup(
    bench,
    into,
    name,
    `Set the cases on their base (${markWords(strips.map((s) => s.mark))})`,
    baseTouches(bench, strips, bottom, box.left),
    [
      'The base stands level, packed where the floor is low: a straightedge along its front strip and across it, and a level on that. The cases are lifted on to it together, screwed to one another as they are.',
    ],
    { length: '+x', width: '+y' },
    'assemble',
    lifted,
  );
  for (const j of joints) driveScrews(bench, into, j);
}

/** True where all cases that a base carries stand. */
export function isCarried(
  bench: Bench,
  { strips }: BaseUnderCases,
  standing: ReadonlyMap<string, Part>,
): boolean {
  const own = new Set(strips.map((s) => s.id));
  const joints = baseJoints(bench, strips);
  return joints.length > 0 && joints.every(({ part, mate }) => standing.has(own.has(part) ? mate : part));
}
