import { LEAF, type SheetTrees } from './sheet-trees.ts';

/** A sheet taken out of the search: its guillotine tree as plain values, in scaled units. */
export interface KeptSheet {
  /** Index in the scaled stocks. */
  readonly stock: number;
  readonly tree: KeptNode;
  readonly count: number;
}

/** `side` is LEAF, ALONG or ACROSS; a leaf has its kind of piece. Sizes are as it lies. */
export interface KeptNode {
  readonly side: number;
  readonly parts: readonly KeptNode[];
  readonly kind: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
}

/** Copies a block of the pool. Parts joined by the same side become one row. */
export function keep(trees: SheetTrees, node: number, kindOf: Int32Array): KeptNode {
  const side = trees.side[node]!;
  const size = { side, length: trees.length[node]!, width: trees.width[node]! };
  if (side === LEAF)
    return { ...size, parts: [], kind: kindOf[trees.piece[node]!]!, turned: trees.turned[node] === 1 };
  const parts: KeptNode[] = [];
  const open = [node];
  while (open.length > 0) {
    const v = open.pop()!;
    if (trees.side[v] === side) open.push(trees.second[v]!, trees.first[v]!);
    else parts.push(keep(trees, v, kindOf));
  }
  return { ...size, parts, kind: -1, turned: false };
}

/** How many pieces of each kind a tree holds, added to `counts`. */
export function tally(tree: KeptNode, counts: Int32Array | Float64Array): void {
  if (tree.side === LEAF) counts[tree.kind]!++;
  else for (const part of tree.parts) tally(part, counts);
}
