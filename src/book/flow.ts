import { type Mark, moved } from './drawing.ts';

/** Something that stands on a page in one piece: marks from (0, 0) downward. */
export interface Block {
  readonly marks: readonly Mark[];
  readonly height: number;
  /** Space above it, unless it is the first on its page. */
  readonly before?: number;
  /** Stands on the same page as the block after it. */
  readonly keep?: boolean;
  /** Repeated at the top of a page that begins with this block: the head of a table. */
  readonly head?: Block;
  /** What stands in its stead where it comes first on a page. */
  readonly first?: () => Block;
}

/** The room that blocks are set in, in millimetres of the page. */
export interface Column {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Sets blocks one under the other, page by page; none is ever divided. Gives the marks of each page. */
export function flow(blocks: readonly Block[], column: Column): Mark[][] {
  const pages: Mark[][] = [];
  let y = 0;
  const begin = () => {
    pages.push([]);
    y = 0;
  };
  const put = (b: Block) => {
    pages[pages.length - 1]!.push(...moved(b.marks, column.left, column.top + y));
    y += b.height;
  };
  blocks.forEach((block, i) => {
    if (pages.length === 0) begin();
    let need = (y > 0 ? (block.before ?? 0) : 0) + block.height;
    for (let k = i; blocks[k]?.keep && blocks[k + 1]; k++)
      need += (blocks[k + 1]!.before ?? 0) + blocks[k + 1]!.height;
    if (y > 0 && y + need > column.height + 1e-6) {
      begin();
      if (block.head) put(block.head);
    } else if (y > 0) y += block.before ?? 0;
    put(y === 0 ? (block.first?.() ?? block) : block);
  });
  return pages;
}
