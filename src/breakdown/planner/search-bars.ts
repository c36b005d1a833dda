import { BarDive } from './bar-dive.ts';
import { BarMaster } from './bar-master.ts';
import type { BarsFound } from './bars-found.ts';
import { bestFit } from './best-fit.ts';
import { Chance } from './chance.ts';
import { RefillBars } from './refill-bars.ts';

/** Work between two pauses, and of a turn of dives or refills. */
const PAUSE = 1_500_000;
const TURN = 6_000_000;
/** Work of refills before the relaxation. Bars longer than this are not refilled. */
const REFILL_FIRST = 1e8;
const LONGEST_REFILL = 200_000;
/** Work after which refills start anew. */
const REFILL_AGAIN = 6e8;

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
 * The fewest bars of one length. Laying in order of length comes first, then a short refill, then the relaxation,
 * whose value rounded up is the bound. Dives into the relaxation and refills then take turns.
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
  const refills = new Refills(lengths, demand, room, chance);
  const step = (dived: number): BarsStep => {
    const work = solved + refills.work + dived;
    return values ? { work, best, bound, values } : { work, best, bound };
  };
  yield step(0);
  while (best.total > bound && refills.work < Math.min(REFILL_FIRST, effort / 4)) {
    best = refills.turn(best, bound, PAUSE) ?? best;
    yield step(0);
  }
  if (best.total <= bound) return;

  const master = new BarMaster(lengths, demand, room);
  master.know(best.bars.map((b) => b.counts));
  master.know(refills.bars());
  let sure = 0;
  while (!master.finished && solved + refills.work < effort) {
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
  while (best.total > bound && solved + refills.work + dive.work < effort) {
    const from = dive.work;
    while (dive.work < from + TURN && !diving.next().done) if (dive.best.total < best.total) break;
    if (dive.best.total < best.total) best = dive.best;
    yield step(dive.work);
    if (best.total <= bound) break;
    const refilled = refills.turn(best, bound, Math.max(TURN, dive.work - from));
    if (refilled) {
      best = dive.best = refilled;
      diving = dive.run(bound);
    }
    yield step(dive.work);
  }
  yield step(dive.work);
}

/** Refills in turns: first for the bound, then for one bar less than the best, then for the bound again. */
class Refills {
  work = 0;
  private readonly lengths: Int32Array;
  private readonly pieces: number[] = [];
  private readonly room: number;
  private readonly chance: Chance;
  private now: RefillBars | undefined;
  private target = 0;
  private started = 0;
  private starts = 0;

  constructor(lengths: Int32Array, demand: Int32Array, room: number, chance: Chance) {
    this.lengths = lengths;
    this.room = room;
    this.chance = chance;
    demand.forEach((d, i) => {
      for (let c = 0; c < d; c++) this.pieces.push(i);
    });
  }

  /** The bars as they are now. */
  bars(): Int32Array[] {
    return this.now?.bars.map((bar) => counted(bar, this.lengths.length)) ?? [];
  }

  /** Works for a while; gives better bars if it found some. */
  turn(best: BarsFound, bound: number, work: number): BarsFound | undefined {
    if (this.room > LONGEST_REFILL) {
      this.work += work;
      return undefined;
    }
    if (!this.now || this.target >= best.total || this.work - this.started > REFILL_AGAIN) {
      this.target = this.starts++ % 2 === 0 ? bound : best.total - 1;
      this.now = new RefillBars(this.lengths, this.room, this.target, this.pieces, this.chance);
      this.started = this.work;
    }
    const before = this.now.work;
    let done = false;
    while (!done && this.now.work - before < work) done = this.now.improve();
    this.work += this.now.work - before;
    if (!done) return undefined;
    const bars = this.now.bars.map((bar) => ({ counts: counted(bar, this.lengths.length), times: 1 }));
    this.now = undefined;
    return { bars, total: bars.length };
  }
}

/** A list of kinds as counts. */
function counted(bar: readonly number[], kinds: number): Int32Array {
  const counts = new Int32Array(kinds);
  for (const i of bar) counts[i]!++;
  return counts;
}
