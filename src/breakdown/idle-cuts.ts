import { type Ticks, ticks } from '../measure/index.ts';
import type { CutNode, CutSheet } from './cut-plan.ts';
import type { CutProblem } from './cut-problem.ts';
import { box, halves } from './planner/by-rules/cut-unit.ts';
import { obeys } from './planner/by-rules/obeys.ts';
import { isWanted } from './planner/by-rules/worth.ts';

type Side = 'length' | 'width';
type Cut = CutNode & { readonly kind: 'cut' };

/**
 * A sheet without cuts that only take waste off before other cuts would take it anyway: the rows that end at such a cut are cut to
 * their own marks at the end, whether the waste is still there or not. Where a rule forbids it the sheet stays as it is.
 */
export function withoutIdleCuts(problem: CutProblem, sheet: CutSheet): CutSheet {
  const root = without(problem, sheet.root);
  const stock = problem.stock.find((s) => s.id === sheet.stock)!;
  return obeys(problem, stock, root) ? { ...sheet, root } : sheet;
}

function without(problem: CutProblem, node: CutNode): CutNode {
  if (node.kind !== 'cut' || node.group !== undefined) return node;
  const parts = [without(problem, node.parts[0]), without(problem, node.parts[1])] as const;
  const [first, second] = parts;
  const waste = second.kind === 'left' && !isWanted(problem, false, second);
  const longer =
    waste && first.kind === 'cut' && !node.yard
      ? reachingTo(problem.kerf, first, node.across, node[node.across])
      : undefined;
  return longer ?? { ...node, parts };
}

/** A node made as long (or wide) as `size`, if that costs no cut: pieces are trimmed at the end of their row in any case. */
function reachingTo(kerf: number, node: CutNode, side: Side, size: Ticks): CutNode | undefined {
  if (node.kind === 'left') return { ...node, [side]: size };
  if (node.kind === 'piece' || node.group !== undefined || node.yard) return undefined;
  const larger = { ...node, [side]: size };
  const [first, second] = node.parts;
  if (node.across !== side) {
    const [a, b] = [reachingTo(kerf, first, side, size), reachingTo(kerf, second, side, size)];
    return a && b && { ...larger, parts: [a, b] };
  }
  if (second.kind === 'left') {
    const [, behind] = halves(
      { ...box(node.x, node.y, node.length, node.width), [side]: size },
      side,
      node.at,
      kerf,
    );
    return { ...larger, parts: [first, { kind: 'left', ...behind }] };
  }
  const rest = ticks(startOf(node, side) + size - startOf(second, side));
  const end = isRow(second, side) ? reachingTo(kerf, second, side, rest) : endedBy(kerf, second, side, rest);
  return end && { ...larger, parts: [first, end] };
}

/** Whether a node is cut on in the same direction. */
function isRow(node: CutNode, side: Side): boolean {
  return node.kind === 'cut' && node.across === side && node.group === undefined;
}

/** A cut where the last of a row ends, and the waste behind it. */
function endedBy(kerf: number, last: CutNode, side: Side, size: Ticks): Cut {
  const area = { ...box(last.x, last.y, last.length, last.width), [side]: size };
  const at = ticks(startOf(last, side) + last[side]);
  const [, behind] = halves(area, side, at, kerf);
  return { kind: 'cut', ...area, across: side, at, parts: [last, { kind: 'left', ...behind }] };
}

function startOf(node: CutNode, side: Side): number {
  return side === 'length' ? node.x : node.y;
}
