// A second evaluator of traced lengths. It shares no code with the ledger that made them: it reads the ledger's
// plain data, knows each operation on its own, and works in whole numbers throughout.
import type { LedgerData } from './ledger.ts';

/** The kinds of entry that rest on nothing else in the ledger. */
export type LeafKind = 'document' | 'measured' | 'row';

/** A leaf under a traced length. */
export interface Leaf {
  readonly kind: LeafKind;
  /** The document path, dimension id or row id. */
  readonly id: string;
  /** What was typed, or what the row says and its source. */
  readonly note: string;
  /** Its index in the ledger. */
  readonly entry: number;
}

/** The operations in the order of their codes in `LedgerData.operation`. */
const CODES = [
  'document',
  'measured',
  'row',
  'sum',
  'less',
  'times',
  'ratio',
  'share',
  'greatest',
  'least',
  'round',
  'fraction',
] as const;

interface Opened {
  readonly kind: (typeof CODES)[number];
  readonly operands: readonly number[];
  readonly numbers: readonly number[];
}

/**
 * The length of entry `id` in ticks, worked out afresh from its leaves alone; `leaf` gives the value of each, from
 * wherever it really stands (the document, the measured values, the tables). Throws on data that no ledger writes.
 */
export function recompute(
  data: LedgerData,
  id: number,
  leaf: (kind: LeafKind, idText: string) => number,
): number {
  return Number(evaluated(data, needed(data, id), leaf).get(id)!);
}

/** The lengths of all entries, each worked out afresh once, as `recompute` does for one. */
export function recomputeAll(
  data: LedgerData,
  leaf: (kind: LeafKind, idText: string) => number,
): readonly number[] {
  const all = Array.from(data.value, (_, at) => at);
  return [...evaluated(data, all, leaf).values()].map(Number);
}

/** Entries by their values; what an entry rests on must come before it. */
function evaluated(
  data: LedgerData,
  entries: readonly number[],
  leaf: (kind: LeafKind, idText: string) => number,
): ReadonlyMap<number, bigint> {
  const found = new Map<number, bigint>();
  for (const at of entries) {
    const entry = open(data, at);
    const kind = leafKind(entry.kind);
    const operand = (o: number): bigint => {
      const value = found.get(o);
      if (value === undefined) throw new Error(`entry ${at} refers to ${o}, which is not earlier`);
      return value;
    };
    found.set(
      at,
      kind !== undefined
        ? BigInt(leaf(kind, data.words[data.reason[at]!]!))
        : evaluate(entry, entry.operands.map(operand)),
    );
  }
  return found;
}

/** Every leaf that entry `id` rests on, each once, in the order they entered the ledger. */
export function leavesOf(data: LedgerData, id: number): Leaf[] {
  const leaves: Leaf[] = [];
  for (const at of needed(data, id)) {
    const kind = leafKind(open(data, at).kind);
    if (kind === undefined) continue;
    leaves.push({ kind, id: data.words[data.reason[at]!]!, note: data.words[data.note[at]!]!, entry: at });
  }
  return leaves;
}

/** Entry `id` and all it rests on, earlier ones first. */
function needed(data: LedgerData, id: number): number[] {
  if (!Number.isInteger(id) || id < 0 || id >= data.value.length)
    throw new RangeError(`no such ledger entry: ${id}`);
  const seen = new Set<number>([id]);
  const waiting = [id];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    for (const o of open(data, at).operands) {
      if (o >= at) throw new Error(`entry ${at} refers to ${o}, which is not earlier`);
      if (!seen.has(o)) waiting.push(o);
      seen.add(o);
    }
  }
  return [...seen].sort((a, b) => a - b);
}

function open(data: LedgerData, at: number): Opened {
  const kind = CODES[data.operation[at]!];
  if (kind === undefined) throw new Error(`entry ${at} has an unknown operation`);
  const from = data.start[at]!;
  const count = data.pool[from]!;
  return {
    kind,
    operands: [...data.pool.subarray(from + 1, from + 1 + count)],
    numbers: [...data.pool.subarray(from + 1 + count, data.start[at + 1]!)],
  };
}

function leafKind(kind: Opened['kind']): LeafKind | undefined {
  return kind === 'document' || kind === 'measured' || kind === 'row' ? kind : undefined;
}

function evaluate(entry: Opened, of: readonly bigint[]): bigint {
  const numbers = entry.numbers.map(BigInt);
  const first = of[0]!;
  switch (entry.kind) {
    case 'sum':
      return of.reduce((a, b) => a + b, 0n);
    case 'less':
      return of.slice(1).reduce((a, b) => a - b, first);
    case 'times':
      return first * numbers[0]!;
    case 'ratio':
      return nearest(first * numbers[0]!, numbers[1]!);
    case 'share':
      return share(first, Number(numbers[0]!), numbers.slice(1));
    case 'greatest':
      return of.reduce((a, b) => (b - a > 0n ? b : a));
    case 'least':
      return of.reduce((a, b) => (b - a < 0n ? b : a));
    case 'round':
      return quotient(first, of[1]!, entry.numbers[0]!) * of[1]!;
    case 'fraction':
      return quotient(first * numbers[0]!, numbers[1]!, entry.numbers[2]!);
    default:
      throw new Error(`not an operation on lengths: ${entry.kind}`);
  }
}

/** over / under as a whole number: down (0), up (1) or to the nearest (2). */
function quotient(over: bigint, under: bigint, way: number): bigint {
  return way === 0 ? floor(over, under) : way === 1 ? -floor(-over, under) : nearest(over, under);
}

/** The whole number at or below over / under. */
function floor(over: bigint, under: bigint): bigint {
  const q = over / under;
  return q * under > over === under > 0n && q * under !== over ? q - 1n : q;
}

/** The whole number nearest to over / under, halves away from zero. */
function nearest(over: bigint, under: bigint): bigint {
  const negative = over < 0n !== under < 0n;
  const [a, b] = [over < 0n ? -over : over, under < 0n ? -under : under];
  const n = floor(2n * a + b, 2n * b);
  return negative ? -n : n;
}

/** The stretch between two boundaries of the divided total, each boundary rounded down. */
function share(total: bigint, index: number, weights: readonly bigint[]): bigint {
  const add = (a: bigint, b: bigint) => a + b;
  const all = weights.reduce(add, 0n);
  const before = weights.slice(0, index).reduce(add, 0n);
  return floor(total * (before + weights[index]!), all) - floor(total * before, all);
}
