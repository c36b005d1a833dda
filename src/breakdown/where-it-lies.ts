import type { Ledger, Traced } from '../measure/index.ts';
import type { CutNode, CutSheet } from './cut-plan.ts';
import type { LotProblem, StockFlaw } from './lot-problem.ts';
import type { PlannedNode } from './planned-sheet.ts';
import { isWanted } from './planner/by-rules/worth.ts';

/** A rectangle of a sheet in ticks. Of a strip the width says nothing. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A flaw as far as it lies on a piece of its sheet, from the piece's own start and near edge. */
export interface FlawThere extends Place {
  readonly name: string;
}

/**
 * Every piece and leftover of a tree with the wood it is really cut from: each cut takes one kerf where the plan reckons two, so
 * what stays begins nearer to the start than the plan has it, by `left` for every cut before it. Waste that comes off first is
 * marked by where it ends, and moves nothing.
 */
export function* leavesWhereTheyLie<N extends CutNode | PlannedNode>(
  root: N,
  areaOf: (node: N) => Place,
  lot: LotProblem,
  left: number,
): Generator<{ readonly leaf: N; readonly place: Place }> {
  const open = [{ node: root, dx: 0, dy: 0 }];
  while (open.length > 0) {
    const { node, dx, dy } = open.pop()!;
    const area = areaOf(node);
    if (node.kind !== 'cut') {
      yield { leaf: node, place: { ...area, x: area.x - dx, y: area.y - dy } };
      continue;
    }
    const [first, second] = node.parts as unknown as readonly [N, N];
    const waste = first.kind === 'left' && !isWanted(lot.problem, lot.lot.form === 'strip', areaOf(first));
    const moved = waste ? 0 : left;
    const lengthwise = node.across === 'length';
    open.push({ node: second, dx: dx + (lengthwise ? moved : 0), dy: dy + (lengthwise ? 0 : moved) });
    open.push({ node: first, dx, dy });
  }
}

/** Whether every piece of a sheet is really cut beside its flaws. */
export function isBesideFlaws(l: Ledger, lot: LotProblem, sheet: CutSheet, left: number): boolean {
  const strip = lot.lot.form === 'strip';
  const flaws = lot.sources.get(sheet.stock)!.flaws.map((f) => placeOf(l, f));
  if (flaws.length === 0) return true;
  for (const { leaf, place } of leavesWhereTheyLie(sheet.root, (n) => n, lot, left))
    if (leaf.kind === 'piece' && flaws.some((f) => meet(f, place, strip))) return false;
  return true;
}

/** A traced rectangle in ticks. */
export function placeOf(
  l: Ledger,
  a: { readonly x: Traced; readonly y: Traced; readonly length: Traced; readonly width: Traced },
): Place {
  return { x: l.ticks(a.x), y: l.ticks(a.y), length: l.ticks(a.length), width: l.ticks(a.width) };
}

/** The flaws that lie on a place, as far as they lie on it. */
export function flawsWithin(
  l: Ledger,
  flaws: readonly StockFlaw[],
  place: Place,
  strip: boolean,
): readonly FlawThere[] {
  return flaws.flatMap((flaw) => {
    const f = placeOf(l, flaw);
    if (!meet(f, place, strip)) return [];
    const [x, length] = common(f.x, f.length, place.x, place.length);
    const [y, width] = strip ? [0, 0] : common(f.y, f.width, place.y, place.width);
    return [{ name: flaw.name, x, y, length, width }];
  });
}

/** What two spans have in common, from the start of the second. */
function common(from: number, size: number, start: number, whole: number): readonly [number, number] {
  const low = Math.max(from, start);
  return [low - start, Math.min(from + size, start + whole) - low];
}

function meet(f: Place, a: Place, strip: boolean): boolean {
  return (
    f.x < a.x + a.length && a.x < f.x + f.length && (strip || (f.y < a.y + a.width && a.y < f.y + f.width))
  );
}
