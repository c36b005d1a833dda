import type { Chance } from '../../measure/index.ts';
import { countedByKind, eachPiece } from './bar-pieces.ts';
import type { BarsFound } from './bars-found.ts';
import { RefillBars } from './refill-bars.ts';

/** Bars finer than this are not refilled: a subset sum takes as many steps for every piece. */
const MOST_ROOM = 20_000;

/** Refills in turns, for as many bars as the bound says. */
export class RefillTurns {
  work = 0;
  readonly able: boolean;
  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly pieces: Int32Array;
  private readonly chance: Chance;
  private now: RefillBars | undefined;

  constructor(lengths: Int32Array, demand: Int32Array, room: number, chance: Chance) {
    this.lengths = lengths;
    this.room = room;
    this.chance = chance;
    this.able = room <= MOST_ROOM;
    this.pieces = eachPiece(demand);
  }

  /** Works for a while; gives the bars if it brought all pieces into as many as the bound says. */
  turn(work: number, _best: BarsFound, bound: number): BarsFound | undefined {
    this.now ??= new RefillBars(this.lengths, this.room, bound, this.pieces, this.chance);
    const before = this.now.work;
    let done = false;
    while (!done && this.now.work - before < work) done = this.now.improve();
    this.work += this.now.work - before;
    if (!done) return undefined;
    const bars = this.now.bars
      .filter((bar) => bar.length > 0)
      .map((bar) => ({ counts: countedByKind(bar, this.lengths.length), times: 1 }));
    return { bars, total: bars.length };
  }
}
