import type { Chance } from '../../measure/index.ts';
import { countedByKind } from './bar-pieces.ts';
import type { BarsFound } from './bars-found.ts';
import { MOST_ROOM } from './fill-exactly.ts';
import { TradeBars } from './trade-bars.ts';

/** Only where the bound leaves at most this share of a bar over: trades go from full bars to full bars. */
const TIGHT = 0.2;

/** Trades in turns, for as many bars as the bound says. */
export class TradeTurns {
  work = 0;
  private readonly lengths: Int32Array;
  private readonly demand: Int32Array;
  private readonly room: number;
  private readonly total: number;
  private readonly chance: Chance;
  private now: TradeBars | undefined;
  private target = 0;

  constructor(lengths: Int32Array, demand: Int32Array, room: number, chance: Chance) {
    this.lengths = lengths;
    this.demand = demand;
    this.room = room;
    this.total = lengths.reduce((a, l, i) => a + l * demand[i]!, 0);
    this.chance = chance;
  }

  /** Whether trades can help toward so many bars. */
  able(bound: number): boolean {
    const over = bound * this.room - this.total;
    return this.room <= MOST_ROOM && over >= 0 && over < TIGHT * this.room;
  }

  /** Works for a while; gives the bars if it brought all pieces into as many as the bound says. */
  turn(work: number, _best: BarsFound, bound: number): BarsFound | undefined {
    if (!this.now || this.target !== bound) {
      this.target = bound;
      this.now = new TradeBars(this.lengths, this.demand, this.room, bound, this.chance);
      this.work += this.now.work;
    }
    const before = this.now.work;
    let done = false;
    while (!done && this.now.work - before < work) done = this.now.improve();
    this.work += this.now.work - before;
    if (!done) return undefined;
    const bars = this.now
      .found()
      .map((bar) => ({ counts: countedByKind(bar, this.lengths.length), times: 1 }));
    return { bars, total: bars.length };
  }
}
