import { ticks } from '../../measure/index.ts';
import type { CutPlan, LengthWeight } from '../cut-plan.ts';
import type { CutPiece, CutProblem, CutStock } from '../cut-problem.ts';
import { asCut, grainAllows } from './judge-rules.ts';
import type { Notes } from './notes.ts';

/**
 * The bound, worked out again in whole numbers of any size from the proof the plan hands over (or from the plain
 * area), and the claims that rest on it.
 */
export function judgeBound(
  notes: Notes,
  problem: CutProblem,
  plan: CutPlan,
  cost: number,
  short: boolean,
): void {
  const shown = shownBound(freed(problem), plan);
  if (plan.bound.cost > shown.cost)
    notes.add(
      'bound',
      'bound.cost',
      `is given as ${plan.bound.cost}; what is handed over shows ${shown.cost}`,
    );
  if (plan.bound.sheets > shown.sheets)
    notes.add(
      'bound',
      'bound.sheets',
      `is given as ${plan.bound.sheets}; what is handed over shows ${shown.sheets}`,
    );
  if (plan.bound.cost < 0 || plan.bound.sheets < 0) notes.add('bound', 'bound', 'is below 0');
  if (!short && plan.bound.cost > cost)
    notes.add('bound', 'bound.cost', 'is more than the plan itself costs');
  if (!plan.proven) return;
  if (short) notes.add('proven', 'proven', 'is claimed though pieces are unplaced for want of stock');
  else if (shown.cost < cost || plan.bound.cost !== cost)
    notes.add(
      'proven',
      'proven',
      `is claimed, but the cost of ${cost} does not meet a bound of ${shown.cost}`,
    );
}

/** Pieces with their allowances, turned where any stock or their own grain lets them lie across: more than may be done. */
function freed(problem: CutProblem): CutProblem {
  const crossing = problem.stock.some((s) => s.grain !== undefined && s.grain !== 'along');
  const some = (p: CutPiece) =>
    problem.stock.some((s) =>
      [false, true].some((turned) => {
        const { length, width } = asCut(p);
        const [l, w] = turned ? [width, length] : [length, width];
        const room = { l: s.length - 2 * s.trim, w: s.width === undefined ? 0 : s.width - 2 * s.trim };
        return grainAllows(p, s, turned) && l <= room.l && w <= room.w;
      }),
    );
  const pieces = problem.pieces.filter(some).map((p): CutPiece => {
    const { length, width } = asCut(p);
    const turn = p.turn || p.across === true || crossing;
    return p.width === undefined
      ? { ...p, length: ticks(length), turn: p.turn }
      : { ...p, length: ticks(length), width: ticks(width), turn };
  });
  return { ...problem, pieces };
}

interface Load {
  /** What all pieces weigh together, in units of which each stock holds so much. */
  readonly total: bigint;
  readonly holds: readonly bigint[];
}

function shownBound(problem: CutProblem, plan: CutPlan): { sheets: number; cost: number } {
  const load = loadOf(problem, plan);
  if (!load) return { sheets: 0, cost: 0 };
  return { sheets: fewest(problem, load), cost: cheapest(problem, load) };
}

function loadOf(problem: CutProblem, plan: CutPlan): Load | undefined {
  const k = problem.kerf;
  const flat = problem.stock.every((s) => s.width === undefined);
  const usable = problem.stock.map((s) => usableOf(s, k));
  const pieces = problem.pieces.map((p) => ({
    p,
    l: p.length + k,
    w: p.width === undefined ? 1 : p.width + k,
  }));
  const fitting = pieces.filter(({ p, l, w }) =>
    usable.some((u) => u.there && (lies(u, l, w) || (turns(p, flat) && lies(u, w, l)))),
  );
  if (usable.length === 0 || fitting.length === 0) return undefined;

  const proof = plan.bound.proof;
  if (proof?.kind === 'values') return valuesLoad(problem, proof, flat);
  const plain: LengthWeight = { kind: 'size', parameter: 0 as LengthWeight['parameter'] };
  const { along, across, both } = proof ?? { along: plain, across: plain, both: false };
  // Only stock that can hold some piece counts for the longest and the widest.
  const useful = usable.filter((u) =>
    fitting.some(({ p, l, w }) => u.there && (lies(u, l, w) || (turns(p, flat) && lies(u, w, l)))),
  );
  let longest = Math.max(0, ...useful.map((u) => u.l));
  let widest = Math.max(0, ...useful.map((u) => u.w));
  if (both) longest = widest = Math.max(longest, widest);
  for (const [f, most] of [
    [along, longest],
    [across, widest],
  ] as const)
    if (f.kind !== 'size' && !(f.parameter >= 1 && 2 * f.parameter <= most)) return undefined;
  const f = (x: number) => weight(along, longest, x);
  const g = (x: number) => weight(across, widest, x);

  let total = 0n;
  for (const { p, l, w } of fitting) {
    const asIs = useful.some((u) => lies(u, l, w));
    const turned = turns(p, flat) && useful.some((u) => lies(u, w, l));
    let one: bigint;
    if (both) one = f(l) * g(w) + f(w) * g(l);
    else if (asIs && turned) one = least(f(l) * g(w), f(w) * g(l));
    else one = asIs ? f(l) * g(w) : turned ? f(w) * g(l) : 0n;
    total += one * BigInt(p.count);
  }
  const holds = usable.map((u) => {
    if (!useful.includes(u)) return 0n;
    return both ? f(u.l) * g(u.w) + f(u.w) * g(u.l) : f(u.l) * g(u.w);
  });
  return { total, holds };
}

interface Usable {
  readonly l: number;
  readonly w: number;
  readonly there: boolean;
}

function usableOf(s: CutStock, kerf: number): Usable {
  return {
    l: s.length - 2 * s.trim + kerf,
    w: s.width === undefined ? 1 : s.width - 2 * s.trim + kerf,
    there: s.count !== 0,
  };
}

function lies(u: Usable, l: number, w: number): boolean {
  return l <= u.l && w <= u.w;
}

function turns(p: CutPiece, flat: boolean): boolean {
  return p.turn && !flat;
}

/** See `LengthWeight`; written out a second time from its description. */
function weight(f: LengthWeight, most: number, x: number): bigint {
  const p = f.parameter;
  switch (f.kind) {
    case 'size':
      return BigInt(x);
    case 'large':
      if (x < p) return 0n;
      return BigInt(x + p > most ? most : x);
    case 'halves': {
      const all = Math.floor(most / p);
      const rest = Math.floor(Math.abs(most - x) / p);
      if (x + x === most) return BigInt(all);
      return x + x > most ? BigInt(2 * (all - rest)) : BigInt(2 * Math.floor(x / p));
    }
  }
}

/** One dimension with values: their claim is checked by filling a bar with the most value, as a knapsack. */
function valuesLoad(
  problem: CutProblem,
  proof: {
    readonly values: readonly { readonly piece: string; readonly value: number }[];
    readonly most: number;
  },
  flat: boolean,
): Load | undefined {
  if (!flat || !Number.isInteger(proof.most) || proof.most < 1) return undefined;
  const k = problem.kerf;
  const there = problem.stock.filter((s) => s.count !== 0);
  const longest = Math.max(...there.map((s) => s.length - 2 * s.trim + k));
  const byId = new Map(problem.pieces.map((p) => [p.id, p]));
  let total = 0n;
  const items: { length: number; value: number; count: number }[] = [];
  for (const v of proof.values) {
    const p = byId.get(v.piece);
    if (!p || !Number.isInteger(v.value) || v.value < 0) return undefined;
    byId.delete(v.piece);
    if (p.length + k > longest) continue;
    total += BigInt(v.value) * BigInt(p.count);
    if (v.value > 0) items.push({ length: p.length + k, value: v.value, count: p.count });
  }
  const worth = mostValue(items, longest);
  if (worth === undefined || worth > proof.most) return undefined;
  return { total, holds: problem.stock.map((s) => (s.count === 0 ? 0n : BigInt(proof.most))) };
}

/** How many different fillings the judge looks at before it calls a claim unproven. */
const MOST_FILLINGS = 400_000;

/**
 * The most value of pieces in a length, each at most so often: all lengths and values that are worth keeping,
 * piece by piece (a knapsack by dominance). Gives up, with nothing, when there are too many.
 */
function mostValue(
  items: readonly { length: number; value: number; count: number }[],
  room: number,
): number | undefined {
  let lengths = [0];
  let values = [0];
  for (const it of items)
    for (let i = 0; i < it.count && (i + 1) * it.length <= room; i++) {
      const nextLengths: number[] = [];
      const nextValues: number[] = [];
      let most = -1;
      // The fillings without and with one more of it, in order of length; only what is worth more is kept.
      for (let a = 0, b = 0; a < lengths.length || b < lengths.length; ) {
        const more = b < lengths.length ? lengths[b]! + it.length : Number.POSITIVE_INFINITY;
        const old = a < lengths.length && lengths[a]! <= more;
        const length = old ? lengths[a]! : more;
        const value = old ? values[a++]! : values[b++]! + it.value;
        if (length > room) break;
        if (value <= most) continue;
        most = value;
        nextLengths.push(length);
        nextValues.push(value);
      }
      if (nextLengths.length > MOST_FILLINGS) return undefined;
      lengths = nextLengths;
      values = nextValues;
    }
  return values.at(-1)!;
}

/** The least cost of sheets that together hold the load, sheets taken in parts, then rounded up to a sum of costs. */
function cheapest(problem: CutProblem, load: Load): number {
  const rows = problem.stock.map((s, i) => ({ s, holds: load.holds[i]! })).filter((r) => r.holds > 0n);
  rows.sort((a, b) => compare(BigInt(a.s.cost) * b.holds, BigInt(b.s.cost) * a.holds));
  let missing = load.total;
  let whole = 0n;
  for (const { s, holds } of rows) {
    if (missing <= 0n) break;
    const cost = BigInt(s.cost);
    const full = s.count === undefined ? missing / holds : least(BigInt(s.count), missing / holds);
    whole += cost * full;
    missing -= holds * full;
    if (missing > 0n && (s.count === undefined || full < BigInt(s.count))) {
      // The last sheet in part: missing / holds of its cost, rounded up.
      whole += (cost * missing + holds - 1n) / holds;
      missing = 0n;
    }
  }
  let step = 0n;
  for (const { s } of rows) step = common(step, BigInt(s.cost));
  return Number(step === 0n ? 0n : ((whole + step - 1n) / step) * step);
}

function fewest(problem: CutProblem, load: Load): number {
  const rows = problem.stock.map((s, i) => ({ s, holds: load.holds[i]! })).filter((r) => r.holds > 0n);
  rows.sort((a, b) => compare(b.holds, a.holds));
  let missing = load.total;
  let sheets = 0n;
  for (const { s, holds } of rows) {
    if (missing <= 0n) break;
    const need = (missing + holds - 1n) / holds;
    const take = s.count === undefined ? need : least(BigInt(s.count), need);
    sheets += take;
    missing -= take * holds;
  }
  return Number(sheets);
}

function least(a: bigint, b: bigint): bigint {
  return a < b ? a : b;
}

function compare(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function common(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}
