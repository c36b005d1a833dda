import type { Chance } from '../../measure/index.ts';
import { countedByKind, eachPiece } from './bar-pieces.ts';
import type { BarsFound } from './bars-found.ts';
import { SwapBars } from './swap-bars.ts';

/** Work after which swaps start anew. */
const AGAIN = 6e8;

/** Swaps in turns: for the bound, and for one bar more while the best is further from it, or for one less than the best. */
export class SwapTurns {
  work = 0;
  private readonly kinds: number;
  private readonly room: number;
  private readonly chance: Chance;
  /** Work after which swaps start anew while they are far from the bound. */
  private readonly first: number;
  /** Kind and length of every piece. */
  private readonly pieces: Int32Array;
  private readonly lengths: Int32Array;
  private now: SwapBars | undefined;
  private target = 0;
  private started = 0;
  private starts = 0;

  constructor(lengths: Int32Array, demand: Int32Array, room: number, chance: Chance, first: number) {
    this.kinds = lengths.length;
    this.room = room;
    this.chance = chance;
    this.first = first;
    this.pieces = eachPiece(demand);
    this.lengths = this.pieces.map((i) => lengths[i]!);
  }

  /** The bars as they are now. */
  bars(): readonly Int32Array[] {
    return this.now?.full().map((bar) => this.counted(bar)) ?? [];
  }

  /** Works for a while; gives better bars if it found some. */
  turn(work: number, best: BarsFound, bound: number): BarsFound | undefined {
    const far = best.total > bound + 1;
    if (!this.now || this.target >= best.total || this.work - this.started > (far ? this.first : AGAIN)) {
      this.target = this.starts++ % 2 === 0 ? bound : Math.min(bound + 1, best.total - 1);
      this.now = new SwapBars(this.lengths, this.room, this.target, this.chance);
      this.started = this.work;
    }
    const before = this.now.work;
    let done = false;
    while (!done && this.now.work - before < work) done = this.now.improve();
    this.work += this.now.work - before;
    if (!done) return undefined;
    const bars = this.now.found().map((bar) => ({ counts: this.counted(bar), times: 1 }));
    this.now = undefined;
    return { bars, total: bars.length };
  }

  private counted(bar: readonly number[]): Int32Array {
    return countedByKind(
      bar.map((at) => this.pieces[at]!),
      this.kinds,
    );
  }
}
