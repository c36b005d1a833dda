import { treeOf } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/** A case that is put together by itself, with all that belongs to it. */
export interface CaseUnit {
  /** The assembly; the first of several goes on to be the whole piece. */
  readonly name: string;
  /** What cards call it. */
  readonly words: string;
  readonly parts: readonly Part[];
}

/** The cases of the piece, in the order in which they stand. */
export function unitsOf(bench: Bench): readonly CaseUnit[] {
  const tree = treeOf(bench.job);
  const boxes = tree.piece ? tree.casesOf(tree.piece.id) : [];
  const parts = new Map(boxes.map((box): [string, Part[]] => [box.id, []]));
  for (const part of bench.setOut.parts) parts.get(tree.caseOf(part.record)?.id ?? '')?.push(part);
  return boxes.map(({ id }, i) => ({
    name: i === 0 ? 'case' : `case:${id}`,
    words: boxes.length === 1 ? 'the case' : `case “${id}”`,
    parts: parts.get(id)!,
  }));
}
