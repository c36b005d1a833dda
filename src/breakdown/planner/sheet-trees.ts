/** Sides by which a tree node joins its two parts. */
export const LEAF = 0;
export const ALONG = 1;
export const ACROSS = 2;

/**
 * Guillotine trees of sheets in typed arrays; memory grows only when more sheets are open than ever before. A tree holds pieces at its
 * leaves; an inner node lays its two parts end to end along the length or across the width, and is exactly as
 * long and wide as they need, so all slack stays at the top until a piece claims it. For each node the arrays
 * hold what it needs and by how much it could still grow. Trees live in blocks of a fixed number of nodes.
 */
export class SheetTrees {
  readonly capacity: number;
  side: Uint8Array;
  first: Int32Array;
  second: Int32Array;
  above: Int32Array;
  length: Int32Array;
  width: Int32Array;
  /** How much longer, and wider, the node may become before the sheet is too small. */
  spareLength: Int32Array;
  spareWidth: Int32Array;
  /** The piece at a leaf, -1 elsewhere. */
  piece: Int32Array;
  turned: Uint8Array;
  /** Per block: nodes in use, top node, size of the sheet, area of its pieces, and a stamp of its contents. */
  size: Int32Array;
  top: Int32Array;
  sheetLength: Int32Array;
  sheetWidth: Int32Array;
  used: Float64Array;
  stamp: Int32Array;
  /** Stamp of a block's contents at which a kind of piece was found not to fit. */
  refused: Int32Array;
  private readonly kinds: number;
  private stamps = 0;
  private unusedBlocks: Int32Array;
  private unusedCount: number;
  private readonly stack: Int32Array;

  constructor(blocks: number, piecesPerSheet: number, kinds: number) {
    this.capacity = 2 * piecesPerSheet + 1;
    const nodes = blocks * this.capacity;
    this.side = new Uint8Array(nodes);
    this.first = new Int32Array(nodes);
    this.second = new Int32Array(nodes);
    this.above = new Int32Array(nodes);
    this.length = new Int32Array(nodes);
    this.width = new Int32Array(nodes);
    this.spareLength = new Int32Array(nodes);
    this.spareWidth = new Int32Array(nodes);
    this.piece = new Int32Array(nodes);
    this.turned = new Uint8Array(nodes);
    this.size = new Int32Array(blocks);
    this.top = new Int32Array(blocks);
    this.sheetLength = new Int32Array(blocks);
    this.sheetWidth = new Int32Array(blocks);
    this.used = new Float64Array(blocks);
    this.stamp = new Int32Array(blocks);
    this.refused = new Int32Array(blocks * kinds);
    this.kinds = kinds;
    this.unusedBlocks = Int32Array.from({ length: blocks }, (_, i) => blocks - 1 - i);
    this.unusedCount = blocks;
    this.stack = new Int32Array(this.capacity + 2);
  }

  /** An empty sheet of a size; gives its block. */
  open(length: number, width: number): number {
    const b = this.take();
    this.size[b] = 0;
    this.top[b] = -1;
    this.sheetLength[b] = length;
    this.sheetWidth[b] = width;
    this.used[b] = 0;
    this.stamp[b] = ++this.stamps;
    return b;
  }

  /** Gives a block back. */
  close(b: number): void {
    this.unusedBlocks[this.unusedCount++] = b;
  }

  /** A copy of a block, with what is known not to fit. */
  copy(from: number): number {
    const to = this.take();
    const c = this.capacity;
    const n = this.size[from]!;
    const f = from * c;
    const shift = to * c - f;
    for (let v = f; v < f + n; v++) {
      const t = v + shift;
      this.side[t] = this.side[v]!;
      this.first[t] = this.first[v]! + shift;
      this.second[t] = this.second[v]! + shift;
      this.above[t] = this.above[v]! < 0 ? -1 : this.above[v]! + shift;
      this.length[t] = this.length[v]!;
      this.width[t] = this.width[v]!;
      this.spareLength[t] = this.spareLength[v]!;
      this.spareWidth[t] = this.spareWidth[v]!;
      this.piece[t] = this.piece[v]!;
      this.turned[t] = this.turned[v]!;
    }
    this.size[to] = n;
    this.top[to] = this.top[from]! < 0 ? -1 : this.top[from]! + shift;
    this.sheetLength[to] = this.sheetLength[from]!;
    this.sheetWidth[to] = this.sheetWidth[from]!;
    this.used[to] = this.used[from]!;
    this.stamp[to] = ++this.stamps;
    const k = this.kinds;
    const old = this.stamp[from]!;
    for (let i = 0; i < k; i++)
      if (this.refused[from * k + i] === old) this.refused[to * k + i] = this.stamps;
    return to;
  }

  /** Whether a kind is known not to fit a block as it is. Adding pieces never makes room, removing does. */
  refuses(b: number, kind: number): boolean {
    return this.refused[b * this.kinds + kind] === this.stamp[b];
  }

  refuse(b: number, kind: number): void {
    this.refused[b * this.kinds + kind] = this.stamp[b]!;
  }

  /**
   * Lays a piece beside the node (or into an empty sheet), joined by `side`; its sizes are as it lies. It must
   * fit: the caller has looked at the spare room.
   */
  add(
    b: number,
    node: number,
    side: number,
    piece: number,
    length: number,
    width: number,
    turned: number,
  ): void {
    const leaf = b * this.capacity + this.size[b]!++;
    this.side[leaf] = LEAF;
    this.piece[leaf] = piece;
    this.turned[leaf] = turned;
    this.length[leaf] = length;
    this.width[leaf] = width;
    this.first[leaf] = -1;
    this.second[leaf] = -1;
    this.used[b]! += length * width;
    if (this.top[b]! < 0) {
      this.top[b] = leaf;
      this.above[leaf] = -1;
      this.spread(b);
      return;
    }
    const join = b * this.capacity + this.size[b]!++;
    const above = this.above[node]!;
    this.side[join] = side;
    this.piece[join] = -1;
    this.first[join] = node;
    this.second[join] = leaf;
    this.above[join] = above;
    this.above[node] = join;
    this.above[leaf] = join;
    if (above < 0) this.top[b] = join;
    else if (this.first[above] === node) this.first[above] = join;
    else this.second[above] = join;
    this.measure(join);
    this.spread(b);
  }

  /**
   * Takes a node with all below it off its sheet and writes its pieces to `out` from `at`; gives the new end.
   * Node numbers of the block change.
   */
  remove(b: number, node: number, out: Int32Array, at: number): number {
    const above = this.above[node]!;
    let end = at;
    const stack = this.stack;
    let depth = 0;
    stack[depth++] = node;
    // Mark the nodes that go with side 255; the parent of `node` goes too.
    while (depth > 0) {
      const v = stack[--depth]!;
      if (this.side[v] === LEAF) {
        out[end++] = this.piece[v]!;
        this.used[b]! -= this.length[v]! * this.width[v]!;
      } else {
        stack[depth++] = this.second[v]!;
        stack[depth++] = this.first[v]!;
      }
      this.side[v] = 255;
    }
    this.stamp[b] = ++this.stamps;
    if (above < 0) {
      this.size[b] = 0;
      this.top[b] = -1;
      this.used[b] = 0;
      return end;
    }
    const rest = this.first[above] === node ? this.second[above]! : this.first[above]!;
    const over = this.above[above]!;
    this.side[above] = 255;
    this.above[rest] = over;
    if (over < 0) this.top[b] = rest;
    else {
      if (this.first[over] === above) this.first[over] = rest;
      else this.second[over] = rest;
      this.measure(over);
    }
    this.pack(b);
    this.spread(b);
    return end;
  }

  /** Needs of a node and all above it. */
  private measure(from: number): void {
    for (let v = from; v >= 0; v = this.above[v]!) {
      const a = this.first[v]!;
      const c = this.second[v]!;
      const la = this.length[a]!;
      const lc = this.length[c]!;
      const wa = this.width[a]!;
      const wc = this.width[c]!;
      if (this.side[v] === ALONG) {
        this.length[v] = la + lc;
        this.width[v] = Math.max(wa, wc);
      } else {
        this.length[v] = Math.max(la, lc);
        this.width[v] = wa + wc;
      }
    }
  }

  /** Spare room of every node of a block, from the top down. */
  private spread(b: number): void {
    const top = this.top[b]!;
    if (top < 0) return;
    const { side, first, second, length, width, spareLength, spareWidth, stack } = this;
    spareLength[top] = this.sheetLength[b]! - length[top]!;
    spareWidth[top] = this.sheetWidth[b]! - width[top]!;
    let depth = 0;
    if (side[top] !== LEAF) stack[depth++] = top;
    while (depth > 0) {
      const v = stack[--depth]!;
      const a = first[v]!;
      const c = second[v]!;
      const sl = spareLength[v]!;
      const sw = spareWidth[v]!;
      if (side[v] === ALONG) {
        spareLength[a] = sl;
        spareLength[c] = sl;
        spareWidth[a] = sw + width[v]! - width[a]!;
        spareWidth[c] = sw + width[v]! - width[c]!;
      } else {
        spareWidth[a] = sw;
        spareWidth[c] = sw;
        spareLength[a] = sl + length[v]! - length[a]!;
        spareLength[c] = sl + length[v]! - length[c]!;
      }
      if (side[a] !== LEAF) stack[depth++] = a;
      if (side[c] !== LEAF) stack[depth++] = c;
    }
  }

  /** Closes the gaps that removed nodes (side 255) left in a block. */
  private pack(b: number): void {
    const base = b * this.capacity;
    let n = this.size[b]!;
    for (let v = base; v < base + n; v++) {
      if (this.side[v] !== 255) continue;
      let last = base + --n;
      while (last > v && this.side[last] === 255) last = base + --n;
      if (last === v) break;
      this.move(b, last, v);
    }
    this.size[b] = n;
  }

  private move(b: number, from: number, to: number): void {
    this.side[to] = this.side[from]!;
    this.piece[to] = this.piece[from]!;
    this.turned[to] = this.turned[from]!;
    this.length[to] = this.length[from]!;
    this.width[to] = this.width[from]!;
    const above = this.above[from]!;
    this.above[to] = above;
    if (above < 0) this.top[b] = to;
    else if (this.first[above] === from) this.first[above] = to;
    else this.second[above] = to;
    const a = this.first[from]!;
    const c = this.second[from]!;
    this.first[to] = a;
    this.second[to] = c;
    if (this.side[to] !== LEAF) {
      this.above[a] = to;
      this.above[c] = to;
    }
  }

  private take(): number {
    if (this.unusedCount === 0) this.grow();
    return this.unusedBlocks[--this.unusedCount]!;
  }

  /** Twice as many blocks. */
  private grow(): void {
    const old = this.size.length;
    const blocks = 2 * old;
    const nodes = blocks * this.capacity;
    this.side = longer(this.side, new Uint8Array(nodes));
    this.first = longer(this.first, new Int32Array(nodes));
    this.second = longer(this.second, new Int32Array(nodes));
    this.above = longer(this.above, new Int32Array(nodes));
    this.length = longer(this.length, new Int32Array(nodes));
    this.width = longer(this.width, new Int32Array(nodes));
    this.spareLength = longer(this.spareLength, new Int32Array(nodes));
    this.spareWidth = longer(this.spareWidth, new Int32Array(nodes));
    this.piece = longer(this.piece, new Int32Array(nodes));
    this.turned = longer(this.turned, new Uint8Array(nodes));
    this.size = longer(this.size, new Int32Array(blocks));
    this.top = longer(this.top, new Int32Array(blocks));
    this.sheetLength = longer(this.sheetLength, new Int32Array(blocks));
    this.sheetWidth = longer(this.sheetWidth, new Int32Array(blocks));
    this.used = longer(this.used, new Float64Array(blocks));
    this.stamp = longer(this.stamp, new Int32Array(blocks));
    this.refused = longer(this.refused, new Int32Array(blocks * this.kinds));
    this.unusedBlocks = new Int32Array(blocks);
    for (let b = blocks - 1; b >= old; b--) this.unusedBlocks[this.unusedCount++] = b;
  }
}

function longer<T extends Uint8Array | Int32Array | Float64Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
