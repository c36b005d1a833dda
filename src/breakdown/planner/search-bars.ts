import { Chance } from '../../measure/index.ts';
import { BarDive } from './bar-dive.ts';
import { BarMaster } from './bar-master.ts';
import type { BarsFound } from './bars-found.ts';
import { bestFit } from './best-fit.ts';
import { SwapBars } from './swap-bars.ts';

/** Work between two pauses, and of a turn of dives or swaps. */
const PAUSE = 1_500_000;
const TURN = 6_000_000;
/** Work of swaps before the relaxation. */
const SWAP_FIRST = 2e7;
/** Work after which swaps start anew. */
const SWAP_AGAIN = 6e8;

export interface BarsStep {
  readonly work: number;
  readonly best: BarsFound;
  readonly bound: number;
  /** Values that show the bound, when it comes from the relaxation. */
  readonly values?: Int32Array;
}

/** What one bar is worth in the whole values of a proof. */
export const WORTH = 100_000_000;

/**
 * The fewest bars of one length. Laying in order of length comes first, then a short search by swaps, then the relaxation,
 * whose value rounded up is the bound. Dives into the relaxation and swaps then take turns.
 */
export function* searchBars(
  lengths: Int32Array,
  demand: Int32Array,
  room: number,
  areaBound: number,
  effort: number,
  seed: number,
): Generator<BarsStep> {
  let best = bestFit(lengths, demand, room);
  let bound = areaBound;
  let values: Int32Array | undefined;
  let solved = 0;
  const chance = new Chance(seed);
  const swaps = new Swaps(lengths, demand, room, chance);
  const step = (dived: number): BarsStep => {
    const work = solved + swaps.work + dived;
    return values ? { work, best, bound, values } : { work, best, bound };
  };
  yield step(0);
  while (best.total > bound && swaps.work < Math.min(SWAP_FIRST, effort / 4)) {
    best = swaps.turn(best, bound, PAUSE) ?? best;
    yield step(0);
  }
  if (best.total <= bound) return;

  const master = new BarMaster(lengths, demand, room);
  master.know(best.bars.map((b) => b.counts));
  master.know(swaps.bars());
  let sure = 0;
  while (!master.finished && solved + swaps.work < effort) {
    sure = Math.max(sure, master.solve(0, 60));
    solved = master.work;
    yield step(0);
    if (Math.ceil(sure - 1e-6) >= master.objective - 1e-6) break;
  }
  const shown = master.values(WORTH);
  const worth = shown.reduce((a, v, i) => a + v * demand[i]!, 0);
  const proven = Math.ceil(worth / WORTH - 1e-12);
  if (proven > bound) {
    bound = proven;
    values = shown;
  }

  const dive = new BarDive(master, best, chance);
  let diving = dive.run(bound);
  while (best.total > bound && solved + swaps.work + dive.work < effort) {
    const from = dive.work;
    while (dive.work < from + TURN && !diving.next().done) if (dive.best.total < best.total) break;
    if (dive.best.total < best.total) best = dive.best;
    yield step(dive.work);
    if (best.total <= bound) break;
    const swapped = swaps.turn(best, bound, Math.max(TURN, dive.work - from) / 1);
    if (swapped) {
      best = dive.best = swapped;
      diving = dive.run(bound);
    }
    yield step(dive.work);
  }
  yield step(dive.work);
}

/** Swaps in turns: first for the bound, then for one bar less than the best, then for the bound again. */
class Swaps {
  work = 0;
  private readonly kinds: number;
  /** Kind and length of every piece. */
  private readonly pieces: Int32Array;
  private readonly lengths: Int32Array;
  private readonly room: number;
  private readonly chance: Chance;
  private now: SwapBars | undefined;
  private target = 0;
  private started = 0;
  private starts = 0;

  constructor(lengths: Int32Array, demand: Int32Array, room: number, chance: Chance) {
    this.kinds = lengths.length;
    this.room = room;
    this.chance = chance;
    const pieces: number[] = [];
    demand.forEach((d, i) => {
      for (let c = 0; c < d; c++) pieces.push(i);
    });
    this.pieces = Int32Array.from(pieces);
    this.lengths = this.pieces.map((i) => lengths[i]!);
  }

  /** The bars as they are now. */
  bars(): Int32Array[] {
    return this.now?.full().map((bar) => this.counted(bar)) ?? [];
  }

  /** Works for a while; gives better bars if it found some. */
  turn(best: BarsFound, bound: number, work: number): BarsFound | undefined {
    const far = best.total > bound + 1;
    if (
      !this.now ||
      this.target >= best.total ||
      this.work - this.started > (far ? SWAP_FIRST : SWAP_AGAIN)
    ) {
      this.target = this.starts++ % 2 === 0 ? bound : best.total - 1;
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
    const counts = new Int32Array(this.kinds);
    for (const at of bar) counts[this.pieces[at]!]!++;
    return counts;
  }
}
