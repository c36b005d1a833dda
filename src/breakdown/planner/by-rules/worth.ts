import type { CutNode, PlanWorth } from '../../cut-plan.ts';
import { type CutProblem, OBJECTIVES } from '../../cut-problem.ts';
import { areaOf } from './obeys.ts';

/** What counts of one sheet, so that a plan is judged by adding up. */
export interface SheetWorth {
  /** Areas of useful leftovers, in whole mm². */
  readonly useful: readonly number[];
  /** The area of the sheet itself before anything is cut, if that is useful. */
  readonly whole: number;
  readonly cuts: number;
  /** Distances that a cut is set to, with the size that they divide. */
  readonly settings: readonly string[];
  /** How each piece comes to its size: piece, which way it lies, which way its last cut goes. */
  readonly alike: readonly string[];
  readonly pieces: readonly string[];
  /** Not told: how much of what is left is in one place. It leads the search on where all else is equal. */
  readonly gathered: number;
}

/** The least that goes back on the rack when the maker doesn't say: 300 by 100 mm, of a bar 300 mm (common practice). */
export const WANTED = [{ length: 300 * 3200, width: 100 * 3200 }] as const;

export function worthOf(problem: CutProblem, root: CutNode): SheetWorth {
  const settings = new Set<string>();
  const alike = new Set<string>();
  const pieces = new Set<string>();
  const flat = problem.stock.every((s) => s.width === undefined);
  const useful: number[] = [];
  let cuts = 0;
  let gathered = 0;
  const open: { node: CutNode; after: string }[] = [{ node: root, after: 'none' }];
  while (open.length > 0) {
    const { node, after } = open.pop()!;
    if (node.kind === 'cut') {
      cuts++;
      const size = node.at - (node.across === 'length' ? node.x : node.y);
      if (!node.yard) settings.add(`${node.across} ${size}`);
      for (const part of node.parts) open.push({ node: part, after: node.across });
    } else if (node.kind === 'piece') {
      alike.add(`${node.piece} ${node.turned} ${after}`);
      pieces.add(node.piece);
    } else {
      const area = flat ? node.length / 3200 : areaOf(node);
      gathered += area * area;
      if (isWanted(problem, flat, node)) useful.push(wholeMm(flat, node));
    }
  }
  return {
    useful,
    whole: isWanted(problem, flat, root) ? wholeMm(flat, root) : 0,
    cuts,
    settings: [...settings],
    alike: [...alike],
    pieces: [...pieces],
    gathered,
  };
}

function wholeMm(flat: boolean, a: { readonly length: number; readonly width: number }): number {
  return Math.floor(a.length / 3200) * (flat ? 1 : Math.floor(a.width / 3200));
}

/** Whether a leftover holds a size that the rack wants; all else is waste. */
export function isWanted(
  problem: Pick<CutProblem, 'wanted'>,
  flat: boolean,
  a: { readonly length: number; readonly width: number },
): boolean {
  return (problem.wanted ?? WANTED).some(
    (w) =>
      (a.length >= w.length && (flat || a.width >= w.width)) ||
      (!flat && a.length >= w.width && a.width >= w.length),
  );
}

/** One sheet, cut so and so often, and what counts of it. */
export interface WorthySheet {
  readonly stock: number;
  readonly count: number;
  readonly root: CutNode;
  readonly worth: SheetWorth;
}

/** What counts of a plan, added up from its sheets. */
export function planWorth(sheets: readonly WorthySheet[]): PlanWorth {
  const settings = new Set<string>();
  const alike = new Set<string>();
  const pieces = new Set<string>();
  // Squares of large areas need more than 53 bits.
  let leftover = 0n;
  let cuts = 0;
  for (const { worth, count } of sheets) {
    const square = (mm: number) => BigInt(mm) * BigInt(mm);
    const gain = worth.useful.reduce((sum, mm) => sum + square(mm), 0n) - square(worth.whole);
    leftover += gain * BigInt(count);
    cuts += worth.cuts * count;
    for (const s of worth.settings) settings.add(s);
    for (const a of worth.alike) alike.add(a);
    for (const p of worth.pieces) pieces.add(p);
  }
  return { leftover: Number(leftover), settings: settings.size, cuts, alike: alike.size - pieces.size };
}

/** A plan's numbers in the order in which they count; the lesser plan is the better. `loose` is what has no place. */
export function ranking(
  problem: CutProblem,
  sheets: readonly WorthySheet[],
  loose: number,
): readonly number[] {
  const w = planWorth(sheets);
  const cost = sheets.reduce((sum, s) => sum + s.count * problem.stock[s.stock]!.cost, 0);
  const of = { cost, leftover: -w.leftover, settings: w.settings, cuts: w.cuts, alike: w.alike };
  const told = (problem.objectives ?? OBJECTIVES).map((o) => of[o]);
  return [loose, ...told, -sheets.reduce((sum, s) => sum + s.worth.gathered * s.count, 0)];
}

/** Below 0 when the first ranking is the better. */
export function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
}
