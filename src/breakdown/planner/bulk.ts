import { FillSheet, rowsOf } from './fill-sheet.ts';
import { type KeptNode, type KeptSheet, keep, tally } from './kept-sheet.ts';
import { RuinRecreate } from './ruin-recreate.ts';
import { lies, type ScaledKind, type ScaledProblem } from './scaled-problem.ts';
import { LEAF } from './sheet-trees.ts';

/** Problems with fewer pieces go to the search as they are. */
const MANY = 2500;
/** Pieces laid out at once when a full sheet is made. */
const AT_ONCE = 400;

/** Sheets that are settled, and the problem that remains. */
export interface Bulk {
  readonly sheets: readonly KeptSheet[];
  readonly cost: number;
  readonly rest: ScaledProblem;
}

/**
 * Takes the bulk off a problem with very many pieces: makes one full sheet, cuts as many like it as the demand
 * allows, and again, until few enough pieces are left to search on. Time grows with the number of different
 * pieces, not with how many there are of each.
 */
export function bulk(p: ScaledProblem): Bulk {
  const left = p.kinds.map((k) => k.count);
  const stockLeft = p.stocks.map((s) => s.count);
  const sheets: KeptSheet[] = [];
  let pieces = left.reduce((a, b) => a + b, 0);
  let cost = 0;
  const bySize = p.kinds.map((_, i) => i).sort((a, b) => area(p.kinds[b]!) - area(p.kinds[a]!) || a - b);
  const byPrice = p.stocks.map((_, j) => j).sort((a, b) => price(p, a) - price(p, b) || a - b);
  const shut = new Set<number>();

  while (pieces > MANY) {
    const largest = bySize.find((i) => left[i]! > 0 && !shut.has(i))!;
    if (largest === undefined) break;
    const stock = byPrice.find((j) => stockLeft[j]! > 0 && lies(p.kinds[largest]!, p.stocks[j]!));
    if (stock === undefined) {
      shut.add(largest);
      continue;
    }
    const laid = fullSheet(p, stock, bySize, left);
    const rows = rowsOf(largest, { ...p.kinds[largest]!, count: left[largest]! }, p.stocks[stock]!);
    const best = bestSheet(p, stock, bySize, left);
    const made = [rows, ...(best ? [best] : [])].reduce(
      (a, b) => (covered(p, b) > covered(p, a) ? b : a),
      laid,
    );
    const used = new Float64Array(p.kinds.length);
    tally(made, used);
    let times = stockLeft[stock]!;
    used.forEach((u, i) => {
      if (u > 0) times = Math.min(times, Math.floor(left[i]! / u));
    });
    used.forEach((u, i) => {
      left[i]! -= u * times;
      pieces -= u * times;
    });
    stockLeft[stock]! -= times;
    cost += times * p.stocks[stock]!.cost;
    sheets.push({ stock, tree: made, count: times });
  }
  if (sheets.length === 0 && shut.size === 0) return { sheets, cost, rest: p };
  return { sheets, cost, rest: remaining(p, left, stockLeft, shut) };
}

/** How much more a piece counts than its area says, as a power of it: large ones must not be left to the last. Our own choice. */
const LARGER = 1.1;

/**
 * One sheet of a stock that straight cuts in any number of stages fill best, of kinds that there are enough of to fill it
 * alone; undefined where there are none, or too many sizes to look at.
 */
function bestSheet(
  p: ScaledProblem,
  stock: number,
  bySize: readonly number[],
  left: readonly number[],
): KeptNode | undefined {
  const s = p.stocks[stock]!;
  const enough = bySize.filter((i) => {
    const k = p.kinds[i]!;
    return lies(k, s) && left[i]! * area(k) >= s.length * s.width;
  });
  const fill = new FillSheet(
    enough.map((i) => p.kinds[i]!),
    s,
  );
  if (enough.length === 0 || !fill.able) return undefined;
  fill.solve(
    Float64Array.from(enough, (i) => area(p.kinds[i]!) ** LARGER),
    Int32Array.from(enough, (i) => left[i]!),
  );
  return fill.tree && renamed(fill.tree, enough);
}

/** The same tree, its kinds by their places in the problem. */
function renamed(tree: KeptNode, kinds: readonly number[]): KeptNode {
  if (tree.side === LEAF) return { ...tree, kind: kinds[tree.kind]! };
  return { ...tree, parts: tree.parts.map((part) => renamed(part, kinds)) };
}

/** The area of the pieces in a tree. */
function covered(p: ScaledProblem, tree: KeptNode): number {
  if (tree.side === LEAF) return area(p.kinds[tree.kind]!);
  return tree.parts.reduce((sum, part) => sum + covered(p, part), 0);
}

/** One sheet of a stock filled with the largest pieces first. */
function fullSheet(p: ScaledProblem, stock: number, bySize: readonly number[], left: readonly number[]) {
  const s = p.stocks[stock]!;
  const kinds: ScaledKind[] = [];
  const from: number[] = [];
  let pieces = 0;
  let covered = 0;
  for (const i of bySize) {
    const k = p.kinds[i]!;
    if (left[i]! <= 0 || !lies(k, s)) continue;
    const count = Math.min(left[i]!, Math.ceil((s.length * s.width) / area(k)), AT_ONCE - pieces);
    kinds.push({ ...k, count });
    from.push(i);
    pieces += count;
    covered += count * area(k);
    if (pieces >= AT_ONCE || covered > 4 * s.length * s.width) break;
  }
  const one = new RuinRecreate({ ...p, kinds, stocks: [{ ...s, count: 1 }] }, 1);
  one.clear();
  one.fill(1, Number.POSITIVE_INFINITY);
  const kindOf = Int32Array.from(one.pieceKind, (k) => from[k]!);
  return keep(one.trees, one.trees.top[one.block[0]!]!, kindOf);
}

/** The same problem with what is left. Kinds and stocks keep their places, so that sheets can be joined. */
function remaining(
  p: ScaledProblem,
  left: readonly number[],
  stockLeft: readonly number[],
  shut: ReadonlySet<number>,
): ScaledProblem {
  return {
    ...p,
    kinds: p.kinds.map((k, i) => ({ ...k, count: shut.has(i) ? 0 : left[i]! })),
    stocks: p.stocks.map((s, j) => ({ ...s, count: stockLeft[j]! })),
  };
}

function area(k: ScaledKind): number {
  return k.length * k.width;
}

function price(p: ScaledProblem, stock: number): number {
  const s = p.stocks[stock]!;
  return s.cost / (s.length * s.width);
}
