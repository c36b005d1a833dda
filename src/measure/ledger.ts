import { type Rounding, roundHalfAway, type Ticks, ticks, toStep } from './ticks.ts';

/** A traced length: an index into the ledger that made it. */
export type Traced = number & { readonly traced: unique symbol };

/** A length from a table, with the place it was taken from. */
export interface LengthRow {
  readonly id: string;
  readonly value: Ticks;
  /** What the row says, in a maker's words. */
  readonly says: string;
  /** A publication, "common practice", or "from memory". */
  readonly source: string;
}

/** A proportion from a table, as a fraction of whole numbers. */
export interface RatioRow {
  readonly id: string;
  readonly of: readonly [over: number, under: number];
  readonly says: string;
  readonly source: string;
}

/** What an entry of the ledger is. The first three are leaves. */
export const OPERATIONS = [
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
export type LedgerOperation = (typeof OPERATIONS)[number];
type Leaf = 'document' | 'measured' | 'row';

const PLACE = Object.fromEntries(OPERATIONS.map((o, i) => [o, i])) as Record<LedgerOperation, number>;
const NONE: readonly never[] = [];

const ROUNDINGS: readonly Rounding[] = ['down', 'up', 'nearest'];

/** One entry, opened up for reading. */
export interface Entry {
  readonly operation: LedgerOperation;
  readonly value: Ticks;
  /** Why the number is there ("clear width between the sides"), or for a leaf its path, dimension or row id. */
  readonly reason: string;
  readonly operands: readonly Traced[];
  /** Whole numbers that belong to the operation: a count, a fraction, shares, or a way of rounding. */
  readonly numbers: readonly number[];
  /** For a document leaf what was typed, for a row what it says and its source, for a ratio its row id. */
  readonly note: string;
}

/** The ledger as plain data: cheap to copy between threads. */
export interface LedgerData {
  readonly value: Int32Array;
  readonly operation: Uint8Array;
  readonly reason: Int32Array;
  readonly note: Int32Array;
  /** Where each entry's operands start in `pool`; one longer than the entries. */
  readonly start: Int32Array;
  /** Per entry: the number of operands, the operands, then the operation's whole numbers. */
  readonly pool: Float64Array;
  readonly words: readonly string[];
}

/**
 * Every length of a piece, with how it came about. Entries only ever refer to earlier ones, so the ledger can
 * be read, copied and recomputed from front to back.
 */
export class Ledger {
  private value = new Int32Array(4096);
  private operation = new Uint8Array(4096);
  // Told apart only in `data()`: to look each sentence up as it comes would cost more than all the sums.
  private readonly reason: string[] = [];
  /** A row's note is only put together when somebody reads it: most are proportions, asked for again and again. */
  private readonly note: (string | RatioRow)[] = [];
  /** Where the operands of each entry start in the pool, and where the next one's will. */
  private start = new Int32Array(4097);
  private pool = new Float64Array(16384);
  private count = 0;
  private readonly leaves: Readonly<Record<Leaf, Map<string, Traced>>> = {
    document: new Map(),
    measured: new Map(),
    row: new Map(),
  };

  /** How many entries there are. */
  get size(): number {
    return this.count;
  }

  /** The length behind an entry, in ticks. */
  ticks(t: Traced): Ticks {
    if (!(t >= 0 && t < this.count)) throw new RangeError(`no such ledger entry: ${t}`);
    return this.value[t] as Ticks;
  }

  /** A length that stands in the document at `path`; `typed` is what the maker wrote there. */
  document(path: string, value: Ticks, typed: string): Traced {
    return this.known('document', path, value) ?? this.leaf('document', path, value, typed);
  }

  /** A length found on the bench, by the id of the dimension that was measured. */
  measured(dimension: string, value: Ticks): Traced {
    return this.known('measured', dimension, value) ?? this.leaf('measured', dimension, value, 'measured');
  }

  /** A length from a sourced table. */
  row(row: LengthRow): Traced {
    const { id, value } = row;
    return this.known('row', id, value) ?? this.leaf('row', id, value, `${row.says} (${row.source})`);
  }

  /** a + b + ... */
  sum(reason: string, ...terms: readonly Traced[]): Traced {
    let v = 0;
    let at = this.begin(terms.length, 0);
    for (let i = 0; i < terms.length; i++) {
      v += this.ticks(terms[i]!);
      this.pool[at++] = terms[i]!;
    }
    return this.end('sum', reason, v, at);
  }

  /** a - b - c ... */
  less(reason: string, from: Traced, ...taken: readonly Traced[]): Traced {
    let v: number = this.ticks(from);
    let at = this.begin(taken.length + 1, 0);
    this.pool[at++] = from;
    for (let i = 0; i < taken.length; i++) {
      v -= this.ticks(taken[i]!);
      this.pool[at++] = taken[i]!;
    }
    return this.end('less', reason, v, at);
  }

  /** a taken `count` times; the count is a whole number of things, never a measure. */
  times(reason: string, a: Traced, count: number): Traced {
    return this.push('times', reason, this.ticks(a) * count, [a], [count]);
  }

  /** A proportion of `a` from a sourced table, to the nearest tick. */
  ratio(reason: string, a: Traced, row: RatioRow): Traced {
    const [over, under] = row.of;
    const v = roundHalfAway((this.ticks(a) * over) / under);
    return this.push('ratio', reason, v, [a], [over, under], row);
  }

  /**
   * `a` times over / under, to the tick as `how` says. The whole numbers stand in a formula of the document; `stands`
   * tells where.
   */
  fraction(reason: string, a: Traced, over: number, under: number, how: Rounding, stands: string): Traced {
    const q = (this.ticks(a) * over) / under;
    const v = how === 'down' ? Math.floor(q) : how === 'up' ? Math.ceil(q) : roundHalfAway(q);
    return this.push('fraction', reason, v, [a], [over, under, ROUNDINGS.indexOf(how)], stands);
  }

  /**
   * The share of place `index` when `total` is divided by whole-number weights. What doesn't divide is spread by
   * rounding each boundary down, so the shares always sum to the total and equal ones differ by a tick at most.
   */
  share(reason: string, total: Traced, weights: readonly number[], index: number): Traced {
    const v = shareOf(this.ticks(total), weights, index);
    return this.push('share', reason, v, [total], [index, ...weights]);
  }

  /** The greatest of several lengths. */
  greatest(reason: string, ...of: readonly Traced[]): Traced {
    return this.push('greatest', reason, Math.max(...of.map((t) => this.ticks(t))), of, NONE);
  }

  /** The least of several lengths. */
  least(reason: string, ...of: readonly Traced[]): Traced {
    return this.push('least', reason, Math.min(...of.map((t) => this.ticks(t))), of, NONE);
  }

  /** `a` on the grid of what a tool can set; the step is itself traced, to the tool. */
  round(reason: string, a: Traced, step: Traced, how: Rounding): Traced {
    const v = toStep(this.ticks(a), this.ticks(step), how);
    return this.push('round', reason, v, [a, step], [ROUNDINGS.indexOf(how)]);
  }

  /** One entry, for explaining. */
  entry(t: Traced): Entry {
    const value = this.ticks(t);
    const from = this.start[t]!;
    const count = this.pool[from]!;
    return {
      operation: OPERATIONS[this.operation[t]!]!,
      value,
      reason: this.reason[t]!,
      note: written(this.note[t]!),
      operands: [...this.pool.subarray(from + 1, from + 1 + count)] as Traced[],
      numbers: [...this.pool.subarray(from + 1 + count, this.start[t + 1]!)],
    };
  }

  /** A copy as typed arrays. */
  data(): LedgerData {
    const words: string[] = [];
    const wordAt = new Map<string, number>();
    const word = (w: string): number => {
      const known = wordAt.get(w);
      if (known !== undefined) return known;
      wordAt.set(w, words.length);
      return words.push(w) - 1;
    };
    word('');
    const reason = new Int32Array(this.size);
    const note = new Int32Array(this.size);
    for (let i = 0; i < this.size; i++) {
      reason[i] = word(this.reason[i]!);
      note[i] = word(written(this.note[i]!));
    }
    return {
      value: this.value.slice(0, this.count),
      operation: this.operation.slice(0, this.count),
      reason,
      note,
      start: this.start.slice(0, this.count + 1),
      pool: this.pool.slice(0, this.start[this.count]),
      words,
    };
  }

  /** A ledger that goes on from data made by `data()`. */
  static from(data: LedgerData): Ledger {
    const l = new Ledger();
    l.value = data.value.slice();
    l.operation = data.operation.slice();
    l.start = data.start.slice();
    l.pool = data.pool.slice();
    l.count = data.value.length;
    for (let i = 0; i < l.count; i++) {
      const id = data.words[data.reason[i]!]!;
      l.reason.push(id);
      l.note.push(data.words[data.note[i]!]!);
      const kind = OPERATIONS[data.operation[i]!]!;
      if (isLeaf(kind)) l.leaves[kind].set(id, i as Traced);
    }
    return l;
  }

  /** The entry of a leaf that has come before. */
  private known(kind: Leaf, id: string, value: Ticks): Traced | undefined {
    const at = this.leaves[kind].get(id);
    if (at !== undefined && this.value[at] !== value)
      throw new Error(`two values for one leaf: ${kind} ${id}`);
    return at;
  }

  private leaf(kind: Leaf, id: string, value: Ticks, note: string): Traced {
    const t = this.push(kind, id, value, NONE, NONE, note);
    this.leaves[kind].set(id, t);
    return t;
  }

  private push(
    kind: LedgerOperation,
    reason: string,
    value: number,
    operands: readonly Traced[],
    numbers: readonly number[],
    note: string | RatioRow = '',
  ): Traced {
    let at = this.begin(operands.length, numbers.length);
    for (let i = 0; i < operands.length; i++) this.pool[at++] = operands[i]!;
    for (let i = 0; i < numbers.length; i++) this.pool[at++] = numbers[i]!;
    return this.end(kind, reason, value, at, note);
  }

  /** Makes room for an entry with so many operands and whole numbers, and tells where in the pool they go. */
  private begin(operands: number, numbers: number): number {
    const at = this.start[this.count]!;
    this.makeRoom(at + 1 + operands + numbers);
    this.pool[at] = operands;
    return at + 1;
  }

  /** The entry whose operands and numbers end there. */
  private end(
    kind: LedgerOperation,
    reason: string,
    value: number,
    at: number,
    note: string | RatioRow = '',
  ): Traced {
    const id = this.count;
    this.value[id] = ticks(value);
    this.operation[id] = PLACE[kind];
    this.reason.push(reason);
    this.note.push(note);
    this.count = id + 1;
    this.start[this.count] = at;
    return id as Traced;
  }

  /** Room for one more entry, and for so many words of the pool. */
  private makeRoom(words: number): void {
    if (this.count === this.value.length) {
      const entries = 2 * this.count + 16;
      this.value = longer(this.value, new Int32Array(entries));
      this.operation = longer(this.operation, new Uint8Array(entries));
    }
    if (this.count + 1 >= this.start.length)
      this.start = longer(this.start, new Int32Array(2 * this.count + 17));
    if (words > this.pool.length) this.pool = longer(this.pool, new Float64Array(2 * words));
  }
}

function written(note: string | RatioRow): string {
  return typeof note === 'string' ? note : `${note.id}: ${note.says} (${note.source})`;
}

/** The same numbers at the head of a longer array. */
function longer<A extends Int32Array | Uint8Array | Float64Array>(from: A, to: A): A {
  to.set(from);
  return to;
}

function isLeaf(kind: LedgerOperation): kind is Leaf {
  return kind === 'document' || kind === 'measured' || kind === 'row';
}

/** Place `index` of `total` divided by whole weights, each boundary rounded down. */
function shareOf(total: number, weights: readonly number[], index: number): number {
  const all = weights.reduce((a, b) => a + b, 0);
  let before = 0;
  for (let i = 0; i < index; i++) before += weights[i]!;
  const boundary = (w: number) => Math.floor((total * w) / all);
  return boundary(before + weights[index]!) - boundary(before);
}
