import { ticks } from '../../measure/index.ts';
import type { BoundProof, CutBound, LengthWeight } from '../cut-plan.ts';
import type { CutProblem } from '../cut-problem.ts';
import { weigh } from './length-weight.ts';
import { divisor, type ScaledProblem, scaled } from './scaled-problem.ts';

/** How many parameters are tried in each dimension. */
const MOST_PARAMETERS = 81;
/** How many products (pairs of weights times kinds of pieces) are tried. */
const MOST_WORK = 4e6;

/**
 * A lower bound on the sheets and the cost of any plan that cuts every piece for which there is stock: the best over
 * pairs of dual feasible functions, one along and one across (S. Fekete and J. Schepers, "A general framework
 * for bounds for higher-dimensional orthogonal packing problems", Math. Methods of OR 60, 2004). The proof in
 * the result lets another program check it.
 */
export function lowerBound(problem: CutProblem): CutBound {
  return scaledBound(scaled(problem));
}

/** A weight, applied to every kind (as it lies, and turned) and to every stock (length, then width). */
interface Candidate {
  readonly weight: LengthWeight;
  readonly lengths: Float64Array;
  readonly widths: Float64Array;
  readonly stockLengths: Float64Array;
  readonly stockWidths: Float64Array;
}

/** The bound of a problem that is scaled already. */
export function scaledBound(p: ScaledProblem): CutBound {
  if (p.kinds.length === 0 || p.stocks.length === 0) return { sheets: 0, cost: 0 };
  const longest = Math.max(...p.stocks.map((s) => s.length));
  const widest = Math.max(...p.stocks.map((s) => s.width));
  const best = { sheets: 0, cost: 0, proof: undefined as BoundProof | undefined };
  const ways = p.kinds.map((k) => ({
    lies: p.stocks.some((s) => k.length <= s.length && k.width <= s.width),
    turned: k.turn && p.stocks.some((s) => k.width <= s.length && k.length <= s.width),
  }));
  const held = new Float64Array(p.stocks.length);

  const attempt = (along: Candidate, across: Candidate, both: boolean) => {
    let total = 0;
    for (let i = 0; i < ways.length; i++) {
      const a = along.lengths[i]! * across.widths[i]!;
      const b = along.widths[i]! * across.lengths[i]!;
      const w = ways[i]!;
      total += p.kinds[i]!.count * (both ? a + b : !w.turned ? a : !w.lies ? b : Math.min(a, b));
    }
    for (let j = 0; j < held.length; j++) {
      held[j] = along.stockLengths[j]! * across.stockWidths[j]!;
      if (both) held[j]! += along.stockWidths[j]! * across.stockLengths[j]!;
    }
    const cost = leastCost(p, held, total);
    const sheets = leastSheets(p, held, total);
    if (cost < best.cost || (cost === best.cost && sheets <= best.sheets)) return;
    const plain = along.weight.kind === 'size' && across.weight.kind === 'size';
    best.cost = cost;
    best.sheets = sheets;
    best.proof = plain ? undefined : { kind: 'weights', along: along.weight, across: across.weight, both };
  };

  const room = Math.max(2, Math.min(MOST_PARAMETERS, Math.floor(Math.sqrt(MOST_WORK / p.kinds.length))));
  const alongs = candidates(p, longest, room);
  const acrosses = p.flat ? candidates(p, 1, 1) : candidates(p, widest, room);
  for (const along of alongs) for (const across of acrosses) attempt(along, across, false);
  if (p.kinds.some((k) => k.turn)) {
    const common = longest === widest ? alongs : candidates(p, Math.max(longest, widest), room);
    for (const along of common) for (const across of common) attempt(along, across, true);
  }
  const { sheets, cost, proof } = best;
  return proof ? { sheets, cost, proof } : { sheets, cost };
}

/** The weights worth trying in a longest length c, at most `room`; the first is the plain size. */
function candidates(p: ScaledProblem, c: number, room: number): Candidate[] {
  const large = new Set<number>();
  const halves = new Set<number>();
  const add = (to: Set<number>, x: number) => {
    if (x >= 1 && 2 * x <= c) to.add(x);
  };
  for (const k of p.kinds)
    for (const x of [k.length, k.width]) {
      add(large, x);
      add(large, c - x + 1);
      add(halves, x);
      add(halves, c - x + 1);
      add(halves, Math.floor(x / 2));
    }
  for (let j = 2; j <= 8; j++) add(halves, Math.floor(c / (j + 1)) + 1);
  const some = Math.floor((room - 1) / 2);
  const of = (kind: LengthWeight['kind'], from: Set<number>) =>
    spread(
      [...from].sort((a, b) => a - b),
      some,
    ).map((parameter) => candidate(p, kind, parameter, c));
  return [candidate(p, 'size', 0, c), ...of('large', large), ...of('halves', halves)];
}

function candidate(p: ScaledProblem, kind: LengthWeight['kind'], parameter: number, c: number): Candidate {
  const on = (of: readonly { length: number; width: number }[], side: 'length' | 'width') =>
    Float64Array.from(of, (o) => weigh(kind, parameter, c, o[side]));
  return {
    weight: { kind, parameter: ticks(parameter * p.unit) },
    lengths: on(p.kinds, 'length'),
    widths: on(p.kinds, 'width'),
    stockLengths: on(p.stocks, 'length'),
    stockWidths: on(p.stocks, 'width'),
  };
}

/** `most` of a sorted list, evenly spread. */
function spread(of: readonly number[], most: number): number[] {
  if (of.length <= most) return [...of];
  return Array.from({ length: most }, (_, i) => of[Math.floor((i * of.length) / most)]!);
}

/**
 * The least whole cost of sheets that together hold `total`: the cheapest per weight first, the last one in
 * part (a linear relaxation), rounded up to what the costs can add up to.
 */
function leastCost(p: ScaledProblem, held: Float64Array, total: number): number {
  const order = p.stocks.map((_, j) => j).filter((j) => held[j]! > 0);
  order.sort((a, b) => p.stocks[a]!.cost / held[a]! - p.stocks[b]!.cost / held[b]! || a - b);
  let missing = total;
  let cost = 0;
  let step = 0;
  for (const j of order) step = divisor(step, p.stocks[j]!.cost);
  for (const j of order) {
    if (missing <= 0) break;
    const s = p.stocks[j]!;
    const take = Math.min(s.count, missing / held[j]!);
    cost += take * s.cost;
    missing -= take * held[j]!;
  }
  return step === 0 ? 0 : Math.ceil((cost / step) * (1 - 1e-12) - 1e-9) * step;
}

/** The least number of sheets that together hold `total`: the largest first. */
function leastSheets(p: ScaledProblem, held: Float64Array, total: number): number {
  const order = p.stocks.map((_, j) => j).filter((j) => held[j]! > 0);
  order.sort((a, b) => held[b]! - held[a]! || a - b);
  let missing = total * (1 - 1e-12);
  let sheets = 0;
  for (const j of order) {
    if (missing <= 0) break;
    const need = Math.ceil(missing / held[j]! - 1e-9);
    const take = Math.min(p.stocks[j]!.count, need);
    sheets += take;
    missing -= take * held[j]!;
  }
  return sheets;
}
