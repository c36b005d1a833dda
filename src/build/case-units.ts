import { treeOf } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/** A case: its own parts, and the two sides that close it; one of these may be its neighbour’s. */
export interface CaseBox {
  readonly name: string;
  /** What cards call it. */
  readonly words: string;
  readonly left: Part;
  readonly right: Part;
  readonly parts: readonly Part[];
}

/** What is put together by itself: a case, or several that share sides, from the left. */
export interface CaseUnit {
  /** The assembly; the first of several goes on to be the whole piece. */
  readonly name: string;
  readonly words: string;
  readonly boxes: readonly CaseBox[];
  readonly parts: readonly Part[];
}

/** The cases of the piece in the order in which they stand, those that share sides together. */
export function unitsOf(bench: Bench): readonly CaseUnit[] {
  const groups: CaseBox[][] = [];
  for (const box of boxesOf(bench)) {
    const before = groups.at(-1);
    if (before?.at(-1)?.right === box.left) before.push(box);
    else groups.push([box]);
  }
  return groups.map((boxes) => ({
    name: boxes[0]!.name,
    words:
      boxes.length === 1
        ? boxes[0]!.words
        : `cases ${boxes.map((b) => b.words.replace('case ', '')).join(' and ')}`,
    boxes,
    parts: boxes.flatMap((b) => b.parts),
  }));
}

/** How cases that were put together come apart again. */
export function apartWords(bench: Bench): string {
  const units = unitsOf(bench);
  const shared = bench.setOut.parts.some((p) => !units.some((u) => u.parts.includes(p)));
  return `${shared ? 'take off what belongs to several, then' : 'take out'} the screws from case to case`;
}

function boxesOf(bench: Bench): readonly CaseBox[] {
  const tree = treeOf(bench.job);
  const { parts, sides } = bench.setOut;
  const own = new Map(sides.map(({ record }): [string, Part[]] => [record, []]));
  for (const part of parts) own.get(tree.caseOf(part.record)?.id ?? '')?.push(part);
  const byId = new Map(parts.map((p) => [p.id, p]));
  return sides.map(({ record, left, right }, i) => ({
    name: i === 0 ? 'case' : `case:${record}`,
    words: sides.length === 1 ? 'the case' : `case “${record}”`,
    left: byId.get(left)!,
    right: byId.get(right)!,
    parts: own.get(record)!,
  }));
}

/** The parts of a case of one family. */
export function marked(box: CaseBox, letter: string): readonly Part[] {
  return box.parts.filter((p) => p.mark.startsWith(letter));
}

/** Are the panels of a case glued to one another? */
export function isGlued({ setOut }: Bench, { parts }: CaseBox): boolean {
  const own = new Set(parts.map((p) => p.id));
  return setOut.joints.some(
    (j) =>
      j.duty === 'carries' &&
      own.has(j.part) &&
      own.has(j.mate) &&
      (j.hold === 'glue' || j.hold === 'glue-and-screws'),
  );
}
