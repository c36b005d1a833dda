import type { CutNode } from '../../cut-plan.ts';
import type { CutProblem, CutStock, Flaw } from '../../cut-problem.ts';

/** Whether all cuts of a sheet keep to the problem's rules. */
export function obeys(problem: CutProblem, stock: CutStock, root: CutNode): boolean {
  const rules = problem.rules ?? {};
  let heavy = 0;
  let yard = 0;
  const walk = (
    node: CutNode,
    before: 'length' | 'width' | undefined,
    stage: number,
    atYard: boolean,
  ): boolean => {
    if (node.length <= 0 || (stock.width !== undefined && node.width <= 0)) return true;
    const fits = !mustTravel(problem, stock) || travels(problem, stock, node);
    if (node.kind !== 'cut') return fits && (node.kind === 'left' || !touches(stock.flaws, node));
    if (node.yard ? !atYard : !fits) return false;
    if (node.yard && ++yard > rules.yard!.cuts) return false;
    const now = node.across === before ? stage : stage + 1;
    if (rules.stages !== undefined && now > rules.stages) return false;
    const across = node.across === 'length' ? node.width : node.length;
    if (!node.yard && rules.longest !== undefined && stock.width !== undefined && across > rules.longest)
      return false;
    if (rules.hold !== undefined && Math.max(...node.parts.map((p) => p[node.across])) < rules.hold)
      return false;
    if (rules.carry && areaOf(node) > rules.carry.area && ++heavy > rules.carry.cuts) return false;
    return node.parts.every((p) => walk(p, node.across, now, node.yard === true));
  };
  if (
    root.kind === 'cut' &&
    rules.first !== undefined &&
    root.across !== rules.first &&
    canBegin(root, rules.first, problem.kerf)
  )
    return false;
  return walk(root, undefined, 0, true);
}

/** In mm². */
export function areaOf(node: { readonly length: number; readonly width: number }): number {
  return (node.length / 3200) * (node.width / 3200);
}

export function mustTravel(problem: CutProblem, stock: CutStock): boolean {
  return problem.rules?.yard !== undefined && stock.yard === true;
}

/** Whether an area, with what is rough round it, goes into the vehicle, either way round. */
export function travels(
  problem: CutProblem,
  stock: CutStock,
  a: { readonly x: number; readonly y: number; readonly length: number; readonly width: number },
): boolean {
  const { over, length, width } = problem.rules!.yard!;
  const span = (from: number, size: number, all: number) => {
    const low = from <= stock.trim ? 0 : from - over;
    const high = from + size >= all - stock.trim ? all : from + size + over;
    return high - low;
  };
  const l = span(a.x, a.length, stock.length);
  const w = stock.width === undefined ? 0 : span(a.y, a.width, stock.width);
  return (l <= length && w <= width) || (l <= width && w <= length);
}

/** Whether a rectangle touches a flaw. On bars, where nothing has a width, lengths alone count. */
export function touches(
  flaws: readonly Flaw[] | undefined,
  a: { readonly x: number; readonly y: number; readonly length: number; readonly width: number },
): boolean {
  return (flaws ?? []).some(
    (f) =>
      f.x < a.x + a.length &&
      a.x < f.x + f.length &&
      ((f.width === 0 && a.width === 0) || (f.y < a.y + a.width && a.y < f.y + f.width)),
  );
}

/** Whether a cut that divides this size could go right through without hitting a piece. */
function canBegin(root: CutNode, across: 'length' | 'width', kerf: number): boolean {
  const spans: [number, number][] = [];
  const open = [root];
  while (open.length > 0) {
    const n = open.pop()!;
    if (n.kind === 'cut') open.push(...n.parts);
    else if (n.kind === 'piece')
      spans.push(across === 'length' ? [n.x, n.x + n.length] : [n.y, n.y + n.width]);
  }
  spans.sort((a, b) => a[0] - b[0]);
  const start = across === 'length' ? root.x : root.y;
  let end: number = start;
  for (const [from, to] of spans) {
    // A whole kerf must find room, and before the first piece there must be something to cut off.
    if (end > start ? from - end >= kerf : from - start > kerf) return true;
    end = Math.max(end, to);
  }
  return end < start + root[across];
}
