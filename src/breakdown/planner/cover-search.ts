import type { Chance } from '../../measure/index.ts';
import type { CoverColumns } from './cover-columns.ts';
import { CoverRelaxation, type CoverState } from './cover-relaxation.ts';

/** What the relaxation may be wrong by, for all and for each bar. */
const SLACK = 1e-6;
const SLACK_EACH = 2e-8;

/**
 * Looks for so many fillings that hold each piece exactly once: depth first, guided and cut off by the relaxation. Each step
 * takes, of the kinds that the relaxation covers in parts, the one that fewest fillings are left for, and tries these one
 * after the other. What would cost more than there is to lose is closed on the way (reduced-cost fixing; Crowder, Johnson
 * and Padberg, Operations Research 31, 1983).
 */
export class CoverSearch {
  work = 0;
  private readonly relaxation: CoverRelaxation;
  private readonly found: CoverColumns;
  private readonly demand: Int32Array;
  private readonly bars: number;
  private readonly slack: number;
  private readonly open: Uint8Array;
  /** The fillings each kind is in, and how many of them are open. */
  private readonly of: readonly Int32Array[];
  private readonly ways: Int32Array;
  private readonly closed: number[] = [];
  private readonly picked: number[] = [];
  private readonly states: CoverState[] = [];
  private readonly accept: (picked: readonly number[]) => boolean;

  /** `accept` is asked of every cover whether it will do. */
  constructor(
    found: CoverColumns,
    demand: Int32Array,
    bars: number,
    chance: Chance,
    accept: (picked: readonly number[]) => boolean,
  ) {
    this.found = found;
    this.bars = bars;
    this.accept = accept;
    this.slack = SLACK + SLACK_EACH * bars;
    const { columns, kinds } = found;
    this.demand = Int32Array.from(kinds, (k) => demand[k]!);
    // No two cost quite the same, or the relaxation would turn in circles.
    const cost = Float64Array.from({ length: columns.length }, () => 1 + 1e-8 * chance.share());
    this.relaxation = new CoverRelaxation(columns, kinds.length, cost);
    this.open = new Uint8Array(columns.length).fill(1);
    const of: number[][] = Array.from(kinds, () => []);
    for (let j = 0; j < columns.length; j++)
      for (let k = columns.start[j]!; k < columns.start[j + 1]!; k++) of[columns.kind[k]!]!.push(j);
    this.of = of.map((list) => Int32Array.from(list));
    this.ways = Int32Array.from(of, (list) => list.length);
  }

  /** Goes on step by step; gives the fillings of a cover, or undefined when there is none that will do. */
  *run(): Generator<void, readonly number[] | undefined> {
    return (yield* this.node(0)) ? this.picked : undefined;
  }

  private *node(depth: number): Generator<void, boolean> {
    const { relaxation } = this;
    const left = this.bars - this.picked.length;
    const before = relaxation.work;
    const can = this.isOpen() && relaxation.solve(this.demand, this.open, left + this.slack);
    this.work += relaxation.work - before;
    yield;
    if (!can) return false;
    const spare = left - relaxation.objective + this.slack;
    for (let j = 0; j < this.open.length; j++)
      if (this.open[j] === 1 && relaxation.reducedCost(j) > spare) this.close(j);
    this.work += 4 * this.open.length;
    if (!this.isOpen()) return false;
    const kind = this.hardest();
    if (kind >= 0) return yield* this.branch(kind, depth, 1);
    if (this.isWhole()) return true;
    // That cover will not do: others first, and it again only in parts.
    const other = this.freest();
    return other >= 0 && (yield* this.branch(other, depth, -1));
  }

  /** Tries every filling that a kind is left with; those that the relaxation takes come first, or last. */
  private *branch(kind: number, depth: number, first: 1 | -1): Generator<void, boolean> {
    const { relaxation } = this;
    const { m } = relaxation;
    this.states[depth] ??= { basis: new Int32Array(m), inverse: new Float64Array(m * m) };
    const state = this.states[depth]!;
    relaxation.save(state);
    const ways = [...this.of[kind]!]
      .filter((j) => this.open[j] === 1)
      .map((j) => ({ j, part: relaxation.part(j), cost: relaxation.reducedCost(j) }))
      .sort((a, b) => first * (b.part - a.part) || a.cost - b.cost || a.j - b.j);
    for (const [i, { j }] of ways.entries()) {
      const [closed, picked] = [this.closed.length, this.picked.length];
      if (i > 0) relaxation.restore(state);
      if (this.pick(j) && (yield* this.node(depth + 1))) return true;
      this.undo(closed, picked);
      // From here on without it.
      this.close(j);
    }
    return false;
  }

  /** Takes the fillings that the relaxation takes, all of them whole. */
  private isWhole(): boolean {
    const { relaxation, picked } = this;
    const before = picked.length;
    for (let r = 0; r < relaxation.m; r++)
      for (let c = Math.round(relaxation.x[r]!); c > 0; c--) picked.push(relaxation.basis[r]!);
    if (picked.length <= this.bars && this.accept(picked)) return true;
    picked.length = before;
    return false;
  }

  /** Whether each kind has a filling left. */
  private isOpen(): boolean {
    for (let i = 0; i < this.demand.length; i++) if (this.demand[i]! > 0 && this.ways[i] === 0) return false;
    return true;
  }

  /** Takes a filling, and any that is the only one left for a kind. False when a kind is left without one. */
  private pick(first: number): boolean {
    const { start, kind, times } = this.found.columns;
    const queue = [first];
    for (let j = queue.pop(); j !== undefined; j = queue.pop()) {
      if (this.open[j] === 0) continue;
      if (this.picked.length >= this.bars) return false;
      this.picked.push(j);
      for (let k = start[j]!; k < start[j + 1]!; k++) {
        const i = kind[k]!;
        this.demand[i]! -= times[k]!;
        for (const other of this.of[i]!)
          if (this.open[other] === 1 && this.timesIn(other, i) > this.demand[i]!) this.close(other);
        this.work += this.of[i]!.length * 3;
      }
      for (let i = 0; i < this.demand.length; i++) {
        if (this.demand[i] === 0 || this.ways[i]! > 1) continue;
        if (this.ways[i] === 0) return false;
        const only = this.of[i]!.find((other) => this.open[other] === 1)!;
        if (!queue.includes(only)) queue.push(only);
      }
    }
    return true;
  }

  private timesIn(j: number, i: number): number {
    const { start, kind, times } = this.found.columns;
    for (let k = start[j]!; k < start[j + 1]!; k++) if (kind[k] === i) return times[k]!;
    return 0;
  }

  private close(j: number): void {
    if (this.open[j] === 0) return;
    const { start, kind } = this.found.columns;
    this.open[j] = 0;
    for (let k = start[j]!; k < start[j + 1]!; k++) this.ways[kind[k]!]!--;
    this.closed.push(j);
  }

  private undo(closed: number, picked: number): void {
    const { start, kind, times } = this.found.columns;
    while (this.closed.length > closed) {
      const j = this.closed.pop()!;
      this.open[j] = 1;
      for (let k = start[j]!; k < start[j + 1]!; k++) this.ways[kind[k]!]!++;
    }
    while (this.picked.length > picked) {
      const j = this.picked.pop()!;
      for (let k = start[j]!; k < start[j + 1]!; k++) this.demand[kind[k]!]! += times[k]!;
    }
  }

  /** The kind with the most fillings left, where one has more than one. */
  private freest(): number {
    let best = -1;
    for (let i = 0; i < this.demand.length; i++)
      if (this.demand[i]! > 0 && this.ways[i]! > (best < 0 ? 1 : this.ways[best]!)) best = i;
    return best;
  }

  /** The kind with the fewest fillings left among those covered in parts; -1 when there is none. */
  private hardest(): number {
    const { relaxation } = this;
    const { start, kind } = this.found.columns;
    let best = -1;
    for (let r = 0; r < relaxation.m; r++) {
      const j = relaxation.basis[r]!;
      const x = relaxation.x[r]!;
      if (j < 0 || Math.abs(x - Math.round(x)) < 1e-6) continue;
      for (let k = start[j]!; k < start[j + 1]!; k++) {
        const i = kind[k]!;
        if (best < 0 || this.ways[i]! < this.ways[best]! || (this.ways[i] === this.ways[best] && i < best))
          best = i;
      }
    }
    return best;
  }
}
