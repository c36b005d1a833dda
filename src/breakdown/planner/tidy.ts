import { type KeptSheet, keep, tally } from './kept-sheet.ts';
import { RuinRecreate } from './ruin-recreate.ts';
import { lies, type ScaledProblem } from './scaled-problem.ts';

/** Shares of the search's effort: for the sheets before the last, and for each size tried for the last one. */
const CROWD = 0.03;
const SHRINK = 0.0015;

/**
 * Makes what is left more useful at the same cost: the least used sheet gives what it can to the others, then
 * its pieces are laid into as short or as narrow a part of it as can be found, so that one large rectangle is
 * left. Sheets cut more than once, and whatever holds more than `most` pieces, stay as they are.
 */
export function tidy(
  p: ScaledProblem,
  sheets: readonly KeptSheet[],
  effort: number,
  seed: number,
  most = 400,
): KeptSheet[] {
  if (sheets.length === 0 || sheets.some((s) => s.count > 1)) return [...sheets];
  const counts = sheets.map((s) => {
    const c = new Float64Array(p.kinds.length);
    tally(s.tree, c);
    return c;
  });
  const area = (c: Float64Array) => c.reduce((a, n, i) => a + n * p.kinds[i]!.length * p.kinds[i]!.width, 0);
  const use = sheets.map((s, i) => area(counts[i]!) / (p.stocks[s.stock]!.length * p.stocks[s.stock]!.width));
  const last = use.indexOf(Math.min(...use));
  const all = new Float64Array(p.kinds.length);
  for (const c of counts) for (let i = 0; i < c.length; i++) all[i]! += c[i]!;
  if (all.reduce((a, b) => a + b, 0) > most) return [...sheets];

  const stock = sheets[last]!.stock;
  const others = sheets.filter((_, i) => i !== last);
  const crowded = crowd(p, others, all, area(counts[last]!), effort * CROWD, seed);
  const lastPieces = crowded ? less(all, crowded, p.kinds.length) : counts[last]!;
  const tree = shrunk(p, stock, lastPieces, effort * SHRINK, seed);
  if (tree) return [...(crowded ?? others), { stock, tree, count: 1 }];
  const alone = shrunk(p, stock, counts[last]!, effort * SHRINK, seed);
  return alone ? [...others, { stock, tree: alone, count: 1 }] : [...sheets];
}

/** The same sheets, but one, with more on them: gives nothing if what stays over is not less than before,
 * or nothing stays over at all (then there is a cheaper plan, which is not for here to find). */
function crowd(
  p: ScaledProblem,
  others: readonly KeptSheet[],
  all: Float64Array,
  before: number,
  effort: number,
  seed: number,
): KeptSheet[] | undefined {
  if (others.length === 0) return undefined;
  const there = p.stocks.map((_, j) => others.filter((s) => s.stock === j).length);
  const r = new RuinRecreate(part(p, all, there), seed);
  const kinds = keptKinds(p, all);
  r.clear();
  r.fill(1, Number.POSITIVE_INFINITY);
  r.begin();
  let best: KeptSheet[] | undefined;
  let least = before;
  while (r.work < effort) {
    const done = r.improve(Number.POSITIVE_INFINITY);
    if (done) return undefined;
    if (r.looseWeight >= least) continue;
    least = r.looseWeight;
    best = taken(r, kinds, keptStocks(p, there));
  }
  return best;
}

/** Some pieces on one sheet, in as small a part of it as found; nothing when they don't all go on it. */
function shrunk(p: ScaledProblem, stock: number, pieces: Float64Array, effort: number, seed: number) {
  const s = p.stocks[stock]!;
  const tree = laidOn(p, stock, pieces, s.length, s.width, effort, seed);
  if (!tree) return undefined;
  let best = { tree, left: 0 };
  for (const side of ['length', 'width'] as const) {
    let enough = s[side];
    let short = 0;
    for (let t = 0; t < 9 && enough - short > 1; t++) {
      const size = (enough + short) >> 1;
      const l = side === 'length' ? size : s.length;
      const w = side === 'width' ? size : s.width;
      const smaller = laidOn(p, stock, pieces, l, w, effort, seed);
      if (smaller) enough = size;
      else short = size;
      const left = s.length * s.width - l * w;
      if (smaller && left > best.left) best = { tree: smaller, left };
    }
  }
  return best.tree;
}

/** All of some pieces on one sheet of a given size, if that is found quickly. */
function laidOn(
  p: ScaledProblem,
  stock: number,
  pieces: Float64Array,
  length: number,
  width: number,
  effort: number,
  seed: number,
) {
  const s = { ...p.stocks[stock]!, length, width, count: 1 };
  const kinds = keptKinds(p, pieces);
  const q = { ...p, kinds: kinds.map((i) => ({ ...p.kinds[i]!, count: pieces[i]! })), stocks: [s] };
  if (kinds.length === 0 || q.kinds.some((k) => !lies(k, s))) return undefined;
  const area = q.kinds.reduce((a, k) => a + k.count * k.length * k.width, 0);
  if (area > length * width) return undefined;
  const r = new RuinRecreate(q, seed);
  r.clear();
  r.fill(1, Number.POSITIVE_INFINITY);
  r.begin();
  while (r.looseCount > 0 && r.work < effort) r.improve(Number.POSITIVE_INFINITY);
  return r.looseCount === 0 ? taken(r, kinds, [stock])[0]!.tree : undefined;
}

function part(p: ScaledProblem, pieces: Float64Array, there: readonly number[]): ScaledProblem {
  return {
    ...p,
    kinds: keptKinds(p, pieces).map((i) => ({ ...p.kinds[i]!, count: pieces[i]! })),
    stocks: keptStocks(p, there).map((j) => ({ ...p.stocks[j]!, count: there[j]! })),
  };
}

function keptKinds(p: ScaledProblem, pieces: Float64Array): number[] {
  return [...p.kinds.keys()].filter((i) => pieces[i]! > 0);
}

function keptStocks(p: ScaledProblem, there: readonly number[]): number[] {
  return [...p.stocks.keys()].filter((j) => there[j]! > 0);
}

function less(all: Float64Array, sheets: readonly KeptSheet[], kinds: number): Float64Array {
  const used = new Float64Array(kinds);
  for (const s of sheets) tally(s.tree, used);
  return all.map((c, i) => c - used[i]!);
}

/** Open sheets, with kinds and stocks as the whole problem counts them. */
function taken(r: RuinRecreate, kinds: readonly number[], stocks: readonly number[]): KeptSheet[] {
  const kindOf = Int32Array.from(r.pieceKind, (k) => kinds[k]!);
  const sheets: KeptSheet[] = [];
  for (let s = 0; s < r.slots; s++) {
    const b = r.block[s]!;
    if (b >= 0)
      sheets.push({ stock: stocks[r.stock[s]!]!, tree: keep(r.trees, r.trees.top[b]!, kindOf), count: 1 });
  }
  return sheets;
}
