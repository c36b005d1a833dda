import { type Ticks, ticks } from '../../measure/index.ts';
import type { CutArea, CutNode, CutSheet } from '../cut-plan.ts';
import type { KeptNode, KeptSheet } from './kept-sheet.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import { ALONG, LEAF } from './sheet-trees.ts';

/** Rows longer than this are halved first, so that cut trees stay shallow. */
const LONG_ROW = 24;

/** Draws kept sheets up as cut trees in ticks; sheets cut alike are put together, in the order of the stock. */
export function drawUp(p: ScaledProblem, kept: readonly KeptSheet[]): CutSheet[] {
  const sheets = new Map<string, CutSheet>();
  for (const k of kept) {
    const root = new Drawing(p, k.stock).area(arranged(k.tree), 0, 0);
    const stock = p.problem.stock[p.stocks[k.stock]!.stock]!.id;
    const key = JSON.stringify([p.stocks[k.stock]!.stock, root]);
    const same = sheets.get(key);
    sheets.set(key, { stock, count: (same?.count ?? 0) + k.count, root });
  }
  const order = new Map(p.problem.stock.map((s, i) => [s.id, i]));
  return [...sheets.values()].sort((a, b) => order.get(a.stock)! - order.get(b.stock)! || b.count - a.count);
}

/** Puts the largest part of every row first, so that what is left gathers at the far end. */
function arranged(n: KeptNode): KeptNode {
  if (n.side === LEAF) return n;
  const along = n.side === ALONG;
  const parts = n.parts.map(arranged).sort((a, b) => {
    const across = along ? b.width - a.width : b.length - a.length;
    const down = along ? b.length - a.length : b.width - a.width;
    return across || down || a.kind - b.kind;
  });
  return { ...n, parts };
}

class Drawing {
  private readonly p: ScaledProblem;
  private readonly trim: number;
  private readonly whole: { readonly length: number; readonly width: number };

  constructor(p: ScaledProblem, stock: number) {
    this.p = p;
    this.whole = p.stocks[stock]!;
    this.trim = p.problem.stock[p.stocks[stock]!.stock]!.trim;
  }

  area(n: KeptNode, x: number, y: number): CutNode {
    return this.place(n, x, y, this.whole.length, this.whole.width);
  }

  /**
   * A node in an area that may be larger than it needs: what it doesn't need is cut off first, so that the
   * larger rectangle comes off whole.
   */
  private place(n: KeptNode, x: number, y: number, l: number, w: number): CutNode {
    const alongFirst = Math.max((l - n.length) * w, n.length * (w - n.width));
    const acrossFirst = Math.max(l * (w - n.width), (l - n.length) * n.width);
    if (l > n.length && (w === n.width || alongFirst > acrossFirst)) {
      const rest = this.left(x + n.length, y, l - n.length, w);
      return this.cut('length', x, y, l, w, x + n.length, this.place(n, x, y, n.length, w), rest);
    }
    if (w > n.width) {
      const rest = this.left(x, y + n.width, l, w - n.width);
      return this.cut('width', x, y, l, w, y + n.width, this.place(n, x, y, l, n.width), rest);
    }
    if (n.side === LEAF)
      return {
        kind: 'piece',
        ...this.real(x, y, l, w),
        piece: this.p.problem.pieces[this.p.kinds[n.kind]!.piece]!.id,
        turned: n.turned,
      };
    return this.row(n.side === ALONG, n.parts, x, y, l, w);
  }

  /** Parts end to end in an area that they fill in that direction. */
  private row(
    along: boolean,
    parts: readonly KeptNode[],
    x: number,
    y: number,
    l: number,
    w: number,
  ): CutNode {
    if (parts.length === 1) return this.place(parts[0]!, x, y, l, w);
    const firsts = parts.length > LONG_ROW ? parts.length >> 1 : 1;
    const before = parts.slice(0, firsts);
    const after = parts.slice(firsts);
    let size = 0;
    for (const part of before) size += along ? part.length : part.width;
    return along
      ? this.cut(
          'length',
          x,
          y,
          l,
          w,
          x + size,
          this.row(along, before, x, y, size, w),
          this.row(along, after, x + size, y, l - size, w),
        )
      : this.cut(
          'width',
          x,
          y,
          l,
          w,
          y + size,
          this.row(along, before, x, y, l, size),
          this.row(along, after, x, y + size, l, w - size),
        );
  }

  private left(x: number, y: number, l: number, w: number): CutNode {
    return { kind: 'left', ...this.real(x, y, l, w) };
  }

  private cut(
    across: 'length' | 'width',
    x: number,
    y: number,
    l: number,
    w: number,
    at: number,
    a: CutNode,
    b: CutNode,
  ): CutNode {
    const edge = ticks(this.trim + at * this.p.unit - this.p.problem.kerf);
    return { kind: 'cut', ...this.real(x, y, l, w), across, at: edge, parts: [a, b] };
  }

  /** Scaled units, where everything carries a kerf at its far sides, to ticks on the sheet. */
  private real(x: number, y: number, l: number, w: number): CutArea {
    const [rx, rl] = this.span(x, l);
    const [ry, rw] = this.p.flat ? [ticks(0), ticks(0)] : this.span(y, w);
    return { x: rx, y: ry, length: rl, width: rw };
  }

  private span(from: number, size: number): [Ticks, Ticks] {
    const real = size * this.p.unit - this.p.problem.kerf;
    return [ticks(this.trim + from * this.p.unit + Math.min(0, real)), ticks(Math.max(0, real))];
  }
}
