import { ticks } from '../../measure/index.ts';
import type { CutNode, CutPlan, CutSheet } from '../cut-plan.ts';
import type { CutProblem, CutStock } from '../cut-problem.ts';
import { box, divided, laid, unitsOf } from './by-rules/cut-unit.ts';

/**
 * The sheets of an earlier plan, cut the same way for the sizes and counts of now: the same cuts in the same order, moved
 * to where their pieces end. Sheets that no longer hold their pieces, and pieces that are gone, are left out.
 */
export function sheetsAgain(problem: CutProblem, last: CutPlan): readonly CutSheet[] {
  const stock = new Map(problem.stock.map((s) => [s.id, s]));
  const left = new Map(problem.pieces.map((p) => [p.id, p.count]));
  const there = new Map(problem.stock.map((s) => [s.id, s.count ?? Number.POSITIVE_INFINITY]));
  const again: CutSheet[] = [];
  for (const { stock: id, count, root } of last.sheets)
    for (let i = 0; i < count; i++) {
      const s = stock.get(id);
      if (!s || there.get(id)! <= 0) continue;
      const used = new Map<string, number>();
      const cut = new Again(problem, s, (piece) => {
        const n = (used.get(piece) ?? 0) + 1;
        if (n > (left.get(piece) ?? 0)) return false;
        used.set(piece, n);
        return true;
      }).sheet(root);
      if (!cut || used.size === 0) continue;
      for (const [piece, n] of used) left.set(piece, left.get(piece)! - n);
      there.set(id, there.get(id)! - 1);
      again.push({ stock: id, count: 1, root: cut });
    }
  return again;
}

class Again {
  private readonly problem: CutProblem;
  private readonly stock: CutStock;
  private readonly take: (piece: string) => boolean;
  private readonly units: ReturnType<typeof unitsOf>;

  constructor(problem: CutProblem, stock: CutStock, take: (piece: string) => boolean) {
    this.problem = problem;
    this.stock = stock;
    this.take = take;
    this.units = unitsOf({ ...problem, groups: [] });
  }

  sheet(root: CutNode): CutNode | undefined {
    const { length, width, trim } = this.stock;
    const y = width === undefined ? 0 : trim;
    const whole = box(trim, y, length - 2 * trim, width === undefined ? 0 : width - 2 * trim);
    const shape = this.shape(root);
    return shape ? this.place(shape, whole) : { kind: 'left', ...whole };
  }

  /** What of a node is still wanted, with what it needs now. */
  private shape(node: CutNode): Shape | undefined {
    if (node.kind === 'left') return undefined;
    if (node.kind === 'piece') {
      const at = this.problem.stock.indexOf(this.stock);
      const unit = this.units.find((u) => u.pieces[0]!.id === node.piece);
      const way = unit?.ways.find((w) => w.turned === node.turned && w.stocks.has(at));
      return unit && way && this.take(node.piece)
        ? { length: way.length, width: way.width, piece: (x, y) => laid(unit, way, x, y, this.problem.kerf) }
        : undefined;
    }
    const [a, b] = [this.shape(node.parts[0]), this.shape(node.parts[1])];
    if (!a || !b) return a ?? b;
    const other = node.across === 'length' ? 'width' : 'length';
    const along = a[node.across] + this.problem.kerf + b[node.across];
    const over = Math.max(a[other], b[other]);
    return node.across === 'length'
      ? { length: along, width: over, across: node.across, parts: [a, b] }
      : { length: over, width: along, across: node.across, parts: [a, b] };
  }

  /** A shape in an area: what it doesn't need comes off first, the larger part whole. */
  private place(s: Shape, a: ReturnType<typeof box>): CutNode | undefined {
    if (s.length > a.length || s.width > a.width) return undefined;
    const { kerf } = this.problem;
    const alongFirst = (a.length - s.length) * a.width >= (a.width - s.width) * a.length;
    for (const side of alongFirst ? (['length', 'width'] as const) : (['width', 'length'] as const)) {
      if (s[side] === a[side] || (s.across === side && s.parts)) continue;
      const at = (side === 'length' ? a.x : a.y) + s[side];
      return this.split(
        a,
        side,
        at,
        kerf,
        (area) => this.place(s, area),
        (area) => ({ kind: 'left', ...area }),
      );
    }
    if (s.piece) return s.piece(a.x, a.y);
    const [first, second] = s.parts!;
    const side = s.across!;
    const at = (side === 'length' ? a.x : a.y) + first[side];
    return this.split(
      a,
      side,
      at,
      kerf,
      (area) => this.place(first, area),
      (area) => this.place(second, area),
    );
  }

  private split(
    a: ReturnType<typeof box>,
    side: 'length' | 'width',
    at: number,
    kerf: number,
    first: (area: ReturnType<typeof box>) => CutNode | undefined,
    second: (area: ReturnType<typeof box>) => CutNode | undefined,
  ): CutNode | undefined {
    let whole = true;
    const node = divided(a, side, ticks(at), kerf, (area, isFirst) => {
      const part = isFirst ? first(area) : second(area);
      if (!part) whole = false;
      return part ?? { kind: 'left', ...area };
    });
    return whole ? node : undefined;
  }
}

/** What a node needs, and what it is. */
interface Shape {
  readonly length: number;
  readonly width: number;
  readonly piece?: (x: number, y: number) => CutNode;
  readonly across?: 'length' | 'width';
  readonly parts?: readonly [Shape, Shape];
}
