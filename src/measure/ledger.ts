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
/** Where the empty word stands among the words of `data()`. */
const NO_WORD = 0;

/** How many reasons lie in a page. */
const PAGE = 1024;

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
  // Told apart only in `data()`: to look each sentence up as it comes would cost more than all the sums. They lie in
  // pages, because one long list is copied again and again as it grows.
  private readonly reasons: string[][] = [];
  /**
   * Notes, by entry: seven in eight have none. A row's note is only put together when somebody reads it: most are
   * proportions, asked for again and again.
   */
  private readonly note = new Map<number, string | RatioRow>();
  /** Where the operands of each entry start in the pool, and where the next one's will. */
  private start = new Int32Array(4097);
  private pool = new Float64Array(16384);
  private count = 0;
  /** Where the next operand or number of the entry under way goes. */
  private next = 0;
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
    // Most are of two. Where these are read each by its place, and no loop goes over them, no list of them is made.
    if (terms.length === 2) return this.ofTwo('sum', reason, terms[0]!, terms[1]!);
    let v = 0;
    this.begin(terms.length, 0);
    for (let i = 0; i < terms.length; i++) v += this.operand(terms[i]!);
    return this.end('sum', reason, v);
  }

  /** a - b - c ... */
  less(reason: string, from: Traced, ...taken: readonly Traced[]): Traced {
    if (taken.length === 1) return this.ofTwo('less', reason, from, taken[0]!);
    this.begin(taken.length + 1, 0);
    let v: number = this.operand(from);
    for (let i = 0; i < taken.length; i++) v -= this.operand(taken[i]!);
    return this.end('less', reason, v);
  }

  /** a taken `count` times; the count is a whole number of things, never a measure. */
  times(reason: string, a: Traced, count: number): Traced {
    this.begin(1, 1);
    const v = this.operand(a) * count;
    this.number(count);
    return this.end('times', reason, v);
  }

  /** A proportion of `a` from a sourced table, to the nearest tick. */
  ratio(reason: string, a: Traced, row: RatioRow): Traced {
    const [over, under] = row.of;
    this.begin(1, 2);
    const v = roundHalfAway((this.operand(a) * over) / under);
    this.number(over);
    this.number(under);
    return this.end('ratio', reason, v, row);
  }

  /**
   * `a` times over / under, to the tick as `how` says. The whole numbers stand in a formula of the document; `stands`
   * tells where.
   */
  fraction(reason: string, a: Traced, over: number, under: number, how: Rounding, stands: string): Traced {
    this.begin(1, 3);
    const q = (this.operand(a) * over) / under;
    const v = how === 'down' ? Math.floor(q) : how === 'up' ? Math.ceil(q) : roundHalfAway(q);
    this.number(over);
    this.number(under);
    this.number(ROUNDINGS.indexOf(how));
    return this.end('fraction', reason, v, stands);
  }

  /**
   * The share of place `index` when `total` is divided by whole-number weights. What doesn't divide is spread by
   * rounding each boundary down, so the shares always sum to the total and equal ones differ by a tick at most.
   */
  share(reason: string, total: Traced, weights: readonly number[], index: number): Traced {
    this.begin(1, 1 + weights.length);
    const v = shareOf(this.operand(total), weights, index);
    this.number(index);
    for (const w of weights) this.number(w);
    return this.end('share', reason, v);
  }

  /** The greatest of several lengths. */
  greatest(reason: string, ...of: readonly Traced[]): Traced {
    this.begin(of.length, 0);
    let v = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < of.length; i++) v = Math.max(v, this.operand(of[i]!));
    return this.end('greatest', reason, v);
  }

  /** The least of several lengths. */
  least(reason: string, ...of: readonly Traced[]): Traced {
    this.begin(of.length, 0);
    let v = Number.POSITIVE_INFINITY;
    for (let i = 0; i < of.length; i++) v = Math.min(v, this.operand(of[i]!));
    return this.end('least', reason, v);
  }

  /** `a` on the grid of what a tool can set; the step is itself traced, to the tool. */
  round(reason: string, a: Traced, step: Traced, how: Rounding): Traced {
    this.begin(2, 1);
    const v = toStep(this.operand(a), this.operand(step), how);
    this.number(ROUNDINGS.indexOf(how));
    return this.end('round', reason, v);
  }

  /** One entry, for explaining. */
  entry(t: Traced): Entry {
    const value = this.ticks(t);
    const from = this.start[t]!;
    const count = this.pool[from]!;
    return {
      operation: OPERATIONS[this.operation[t]!]!,
      value,
      reason: this.reasonOf(t),
      note: written(this.note.get(t)),
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
    word(''); // NO_WORD
    const reason = new Int32Array(this.size);
    const note = new Int32Array(this.size);
    for (let i = 0; i < this.size; i++) {
      reason[i] = word(this.reasonOf(i));
      note[i] = word(written(this.note.get(i)));
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
      l.giveReason(i, id);
      if (data.note[i] !== NO_WORD) l.note.set(i, data.words[data.note[i]!]!);
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
    this.begin(0, 0);
    const t = this.end(kind, id, value, note);
    this.leaves[kind].set(id, t);
    return t;
  }

  // An entry goes straight into the pool, bit by bit: lists of its operands would be most of what setting-out leaves
  // to be swept up.

  /** The sum of two lengths, or what one leaves of the other. */
  private ofTwo(kind: 'sum' | 'less', reason: string, a: Traced, b: Traced): Traced {
    this.begin(2, 0);
    const first = this.operand(a);
    const second = this.operand(b);
    return this.end(kind, reason, kind === 'sum' ? first + second : first - second);
  }

  /** Begins an entry, with room for so many operands and whole numbers. */
  private begin(operands: number, numbers: number): void {
    const at = this.start[this.count]!;
    this.makeRoom(at + 1 + operands + numbers);
    this.pool[at] = operands;
    this.next = at + 1;
  }

  /** Adds an operand to the entry that was begun, and gives its length. */
  private operand(t: Traced): Ticks {
    this.pool[this.next++] = t;
    return this.ticks(t);
  }

  /** Adds a whole number behind the operands. */
  private number(n: number): void {
    this.pool[this.next++] = n;
  }

  /** Ends the entry that was begun. */
  private end(kind: LedgerOperation, reason: string, value: number, note?: string | RatioRow): Traced {
    const id = this.count;
    this.value[id] = ticks(value);
    this.operation[id] = PLACE[kind];
    this.giveReason(id, reason);
    if (note !== undefined) this.note.set(id, note);
    this.count = id + 1;
    this.start[this.count] = this.next;
    return id as Traced;
  }

  private giveReason(entry: number, reason: string): void {
    const page = Math.floor(entry / PAGE);
    if (page === this.reasons.length) this.reasons.push(new Array(PAGE));
    this.reasons[page]![entry % PAGE] = reason;
  }

  private reasonOf(entry: number): string {
    return this.reasons[Math.floor(entry / PAGE)]![entry % PAGE]!;
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

function written(note: string | RatioRow | undefined): string {
  if (note === undefined) return '';
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
