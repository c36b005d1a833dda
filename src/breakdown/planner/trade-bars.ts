import type { Chance } from '../../measure/index.ts';
import { FillExactly, type Filling } from './fill-exactly.ts';
import { FitLast } from './fit-last.ts';

/** Bars are closed until so many are open that these hold about so many pieces. */
const LOOSE_PIECES = 19;
const LEAST_OPEN = 3;
const MOST_OPEN = 8;
/** Trades between two tries to close a bar or to fit the loose pieces. */
const TRADES = 2000;
/** Tries to fit the loose pieces into the open bars. */
const FIT_TRIES = 3000;
/** Turns without a bar closed after which one is opened again. */
const STUCK = 20;
/** Heat of the trades in shares of a mean piece's weight, turn by turn. */
const HEATS = [0.02, 0.025, 0.03, 0.035, 0.04];
/** A piece weighs its share of a bar to this power: a long one more than short ones of the same length. */
const POWER = 1.5;
/** Fillings looked at to close a bar. */
const TO_CLOSE = 60;

/**
 * Tries to bring all pieces into a given number of bars where these may waste next to nothing. Most bars are closed,
 * filled to the end; a few are open, and their pieces are loose. One or two pieces of a closed bar are traded for up to
 * three loose ones of the same length together, kept by annealing (S. Kirkpatrick et al., Science 220, 1983), so that long
 * pieces leave the loose ones for the closed bars and short ones come. Many short pieces can be put together in
 * so many ways that a search for the open bars ends well.
 */
export class TradeBars {
  work = 0;
  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly chance: Chance;
  private readonly open: number;
  private readonly from: Int32Array;
  private readonly weight: Float64Array;
  private readonly meanWeight: number;
  /** Kinds in each closed bar, and its waste. */
  private readonly bars: number[][] = [];
  private readonly waste: number[] = [];
  /** How many bars are not closed, and what these may waste. */
  private rest: number;
  private spare: number;
  /** Loose pieces, by kind and one by one. */
  private readonly loose: Int32Array;
  private readonly each: number[] = [];
  private readonly fillings: FillExactly;
  private readonly last: FitLast;
  private fitted: number[][] = [];
  private turns = 0;
  private stuck = 0;
  // The loose pieces of the trade in hand.
  private one = -1;
  private two = -1;
  private three = -1;
  private over = 0;

  /** Lengths are in falling order. */
  constructor(lengths: Int32Array, demand: Int32Array, room: number, bars: number, chance: Chance) {
    this.lengths = lengths;
    this.room = room;
    this.chance = chance;
    this.loose = demand.slice();
    this.rest = bars;
    this.weight = Float64Array.from(lengths, (l) => (l / room) ** POWER);
    this.spare = bars * room;
    let pieces = 0;
    let weight = 0;
    lengths.forEach((l, i) => {
      this.spare -= l * demand[i]!;
      pieces += demand[i]!;
      weight += this.weight[i]! * demand[i]!;
    });
    this.meanWeight = weight / pieces;
    this.open = Math.max(LEAST_OPEN, Math.min(MOST_OPEN, Math.round((LOOSE_PIECES * bars) / pieces)));
    this.fillings = new FillExactly(lengths, room, this.loose);
    this.from = this.fillings.from;
    this.last = new FitLast(lengths, room, chance);
    this.work += 2 * room;
    this.closeMany();
  }

  /** Kinds in every bar, once `improve` has found a place for all. */
  found(): readonly (readonly number[])[] {
    return [...this.bars, ...this.fitted];
  }

  /** One turn of trades and a try to fit what is loose; true when every piece has a place. */
  improve(): boolean {
    this.tradeMany(this.meanWeight * HEATS[this.turns++ % HEATS.length]!);
    if (this.rest > this.open) {
      this.stuck = this.closeMany() ? 0 : this.stuck + 1;
      if (this.stuck > STUCK && this.bars.length > 0) {
        this.stuck = 0;
        this.reopen(this.chance.below(this.bars.length));
      }
      if (this.rest > this.open + 4) return false;
    }
    const before = this.last.work;
    const fitted = this.last.fit(this.loose, this.rest, FIT_TRIES);
    this.work += this.last.work - before + 2 * this.lengths.length;
    this.fitted = fitted ?? [];
    return fitted !== undefined;
  }

  /** Closes bars until few enough are open; whether any could be closed. */
  private closeMany(): boolean {
    let any = false;
    while (this.rest > this.open && this.close()) any = true;
    return any;
  }

  /** Closes a bar round the longest loose piece, with the heaviest filling. */
  private close(): boolean {
    const { loose, chance, weight, room } = this;
    const i = loose.findIndex((n) => n > 0);
    if (i < 0) return false;
    const before = this.fillings.work;
    loose[i]!--;
    const free = room - this.lengths[i]!;
    let best: Filling | undefined;
    let most = 0;
    for (const [pieces, spare] of this.ways()) {
      for (const f of this.fillings.list(free, spare, TO_CLOSE, pieces)) {
        let score = 0;
        for (const k of f.kinds) score += weight[k]!;
        score = score * (0.9 + 0.1 * chance.share()) - (5 * f.waste) / room;
        if (best && score <= most) continue;
        best = f;
        most = score;
      }
      if (best) break;
    }
    this.work += this.fillings.work - before + loose.length;
    if (!best) {
      loose[i]!++;
      return false;
    }
    for (const k of best.kinds) loose[k]!--;
    this.bars.push([i, ...best.kinds]);
    this.waste.push(best.waste);
    this.spare -= best.waste;
    this.rest--;
    return true;
  }

  /** How many pieces may be put beside the longest, and what wasted, in the order in which it is tried. */
  private ways(): readonly (readonly [pieces: number, spare: number])[] {
    const { spare } = this;
    return [
      [1, 0],
      [2, 0],
      [3, 0],
      [5, 0],
      [8, 0],
      [8, Math.min(2, spare)],
      [8, spare],
    ] as const;
  }

  private reopen(b: number): void {
    for (const k of this.bars[b]!) this.loose[k]!++;
    this.spare += this.waste[b]!;
    this.rest++;
    const bar = this.bars.pop()!;
    const waste = this.waste.pop()!;
    if (b === this.bars.length) return;
    this.bars[b] = bar;
    this.waste[b] = waste;
  }

  private tradeMany(heat: number): void {
    const { each, loose, bars, chance } = this;
    each.length = 0;
    loose.forEach((n, i) => {
      for (let c = 0; c < n; c++) each.push(i);
    });
    if (bars.length > 0) for (let t = 0; t < TRADES; t++) this.trade(chance.below(bars.length), heat);
    this.work += 4 * TRADES;
  }

  /** Trades one or two pieces of a closed bar for loose ones, by chance. */
  private trade(b: number, heat: number): void {
    const { lengths, weight, chance } = this;
    const bar = this.bars[b]!;
    const x = chance.below(bar.length);
    let y = -1;
    let out = lengths[bar[x]!]!;
    let lighter = weight[bar[x]!]!;
    if (bar.length > 1 && chance.below(2) === 0) {
      y = chance.below(bar.length - 1);
      if (y >= x) y++;
      out += lengths[bar[y]!]!;
      lighter += weight[bar[y]!]!;
    }
    // What the bar wastes may be filled, or more be wasted while there is something to spare.
    const waste = this.waste[b]!;
    if (!this.pick(out + waste, waste + this.spare, y < 0 ? bar[x]! : -1)) return;
    const { one, two, three } = this;
    const heavier = weight[one]! + (two < 0 ? 0 : weight[two]!) + (three < 0 ? 0 : weight[three]!);
    const worse = lighter - heavier;
    if (worse > 0 && chance.share() > Math.exp(-worse / heat)) return;
    const kept = bar.filter((_, at) => at !== x && at !== y);
    for (const k of [one, two, three]) if (k >= 0) this.fromLoose(k, kept);
    for (const at of [x, y])
      if (at >= 0) {
        this.loose[bar[at]!]!++;
        this.each.push(bar[at]!);
      }
    this.bars[b] = kept;
    this.waste[b] = this.over;
    this.spare += waste - this.over;
    this.work += 2 * this.each.length;
  }

  private fromLoose(k: number, to: number[]): void {
    const { each, loose } = this;
    to.push(k);
    loose[k]!--;
    each[each.indexOf(k)] = each[each.length - 1]!;
    each.pop();
  }

  /** Picks up to three loose pieces that are at most so long together and waste no more; one alone only if not `same`. */
  private pick(length: number, most: number, same: number): boolean {
    const { chance, each, loose, lengths } = this;
    this.one = this.two = this.three = -1;
    const way = chance.below(20);
    if (way < 5) {
      this.one = this.longest(length, most, -1);
      return this.one >= 0 && this.one !== same;
    }
    if (each.length < 3) return false;
    if (way < 13) return this.pickTwo(length, most, -1);
    const first = each[chance.below(each.length)]!;
    if (lengths[first]! >= length) return false;
    loose[first]!--;
    const found = this.pickTwo(length - lengths[first]!, most, first);
    loose[first]!++;
    return found;
  }

  /** Two loose pieces, beside a first one that is picked already (or -1). */
  private pickTwo(length: number, most: number, first: number): boolean {
    const { each, loose, lengths } = this;
    const n = each.length;
    let at = this.chance.below(n);
    for (let t = 0; t < n; t++) {
      const k = each[at]!;
      if (++at === n) at = 0;
      if (loose[k] === 0 || lengths[k]! >= length) continue;
      const other = this.longest(length - lengths[k]!, most, k);
      if (other < 0) continue;
      this.work += t;
      this.one = k;
      this.two = other;
      this.three = first;
      return true;
    }
    this.work += n;
    return false;
  }

  /** The longest loose piece that is at most so long and wastes no more, beside one of a kind; or -1. */
  private longest(length: number, most: number, beside: number): number {
    const { loose, lengths, from } = this;
    const end = Math.min(length, this.room);
    for (let k = from[end]!; k < lengths.length; k++) {
      this.over = length - lengths[k]!;
      if (this.over > most) return -1;
      if (loose[k]! > (k === beside ? 1 : 0)) return k;
    }
    return -1;
  }
}
