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
  private readonly value: number[] = [];
  private readonly operation: number[] = [];
  private readonly reason: number[] = [];
  private readonly note: number[] = [];
  private readonly start: number[] = [0];
  private readonly pool: number[] = [];
  private readonly words: string[] = [''];
  private readonly wordAt = new Map<string, number>([['', 0]]);
  private readonly leafAt = new Map<string, Traced>();

  /** How many entries there are. */
  get size(): number {
    return this.value.length;
  }

  /** The length behind an entry, in ticks. */
  ticks(t: Traced): Ticks {
    const v = this.value[t];
    if (v === undefined) throw new RangeError(`no such ledger entry: ${t}`);
    return v as Ticks;
  }

  /** A length that stands in the document at `path`; `typed` is what the maker wrote there. */
  document(path: string, value: Ticks, typed: string): Traced {
    return this.leaf('document', path, value, typed);
  }

  /** A length found on the bench, by the id of the dimension that was measured. */
  measured(dimension: string, value: Ticks): Traced {
    return this.leaf('measured', dimension, value, 'measured');
  }

  /** A length from a sourced table. */
  row(row: LengthRow): Traced {
    return this.leaf('row', row.id, row.value, `${row.says} (${row.source})`);
  }

  /** a + b + ... */
  sum(reason: string, ...terms: readonly Traced[]): Traced {
    let v = 0;
    for (const t of terms) v += this.ticks(t);
    return this.push('sum', reason, v, terms, []);
  }

  /** a - b - c ... */
  less(reason: string, from: Traced, ...taken: readonly Traced[]): Traced {
    let v: number = this.ticks(from);
    for (const t of taken) v -= this.ticks(t);
    return this.push('less', reason, v, [from, ...taken], []);
  }

  /** a taken `count` times; the count is a whole number of things, never a measure. */
  times(reason: string, a: Traced, count: number): Traced {
    return this.push('times', reason, this.ticks(a) * count, [a], [count]);
  }

  /** A proportion of `a` from a sourced table, to the nearest tick. */
  ratio(reason: string, a: Traced, row: RatioRow): Traced {
    const [over, under] = row.of;
    const v = roundHalfAway((this.ticks(a) * over) / under);
    return this.push('ratio', reason, v, [a], [over, under], `${row.id}: ${row.says} (${row.source})`);
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
    return this.push('greatest', reason, Math.max(...of.map((t) => this.ticks(t))), of, []);
  }

  /** The least of several lengths. */
  least(reason: string, ...of: readonly Traced[]): Traced {
    return this.push('least', reason, Math.min(...of.map((t) => this.ticks(t))), of, []);
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
      reason: this.words[this.reason[t]!]!,
      note: this.words[this.note[t]!]!,
      operands: this.pool.slice(from + 1, from + 1 + count) as Traced[],
      numbers: this.pool.slice(from + 1 + count, this.start[t + 1]!),
    };
  }

  /** A copy as typed arrays. */
  data(): LedgerData {
    return {
      value: Int32Array.from(this.value),
      operation: Uint8Array.from(this.operation),
      reason: Int32Array.from(this.reason),
      note: Int32Array.from(this.note),
      start: Int32Array.from(this.start),
      pool: Float64Array.from(this.pool),
      words: [...this.words],
    };
  }

  /** A ledger that goes on from data made by `data()`. */
  static from(data: LedgerData): Ledger {
    const l = new Ledger();
    const copy = (to: number[], from: ArrayLike<number>) => {
      to.length = 0;
      for (let i = 0; i < from.length; i++) to.push(from[i]!);
    };
    copy(l.value, data.value);
    copy(l.operation, data.operation);
    copy(l.reason, data.reason);
    copy(l.note, data.note);
    copy(l.start, data.start);
    copy(l.pool, data.pool);
    l.words.length = 0;
    data.words.forEach((w, i) => {
      l.words.push(w);
      l.wordAt.set(w, i);
    });
    for (let i = 0; i < l.value.length; i++) {
      const kind = OPERATIONS[l.operation[i]!]!;
      if (kind === 'document' || kind === 'measured' || kind === 'row')
        l.leafAt.set(leafKey(kind, l.words[l.reason[i]!]!), i as Traced);
    }
    return l;
  }

  private leaf(kind: 'document' | 'measured' | 'row', id: string, value: Ticks, note: string): Traced {
    const key = leafKey(kind, id);
    const known = this.leafAt.get(key);
    if (known !== undefined) {
      if (this.ticks(known) !== value) throw new Error(`two values for one leaf: ${key}`);
      return known;
    }
    const t = this.push(kind, id, value, [], [], note);
    this.leafAt.set(key, t);
    return t;
  }

  private push(
    kind: LedgerOperation,
    reason: string,
    value: number,
    operands: readonly Traced[],
    numbers: readonly number[],
    note = '',
  ): Traced {
    const id = this.value.length as Traced;
    this.value.push(ticks(value));
    this.operation.push(OPERATIONS.indexOf(kind));
    this.reason.push(this.word(reason));
    this.note.push(this.word(note));
    this.pool.push(operands.length, ...operands, ...numbers);
    this.start.push(this.pool.length);
    return id;
  }

  private word(w: string): number {
    const known = this.wordAt.get(w);
    if (known !== undefined) return known;
    this.words.push(w);
    this.wordAt.set(w, this.words.length - 1);
    return this.words.length - 1;
  }
}

function leafKey(kind: string, id: string): string {
  return `${kind} ${id}`;
}

/** Place `index` of `total` divided by whole weights, each boundary rounded down. */
function shareOf(total: number, weights: readonly number[], index: number): number {
  const all = weights.reduce((a, b) => a + b, 0);
  let before = 0;
  for (let i = 0; i < index; i++) before += weights[i]!;
  const boundary = (w: number) => Math.floor((total * w) / all);
  return boundary(before + weights[index]!) - boundary(before);
}
