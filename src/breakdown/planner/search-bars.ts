import { Chance } from '../../measure/index.ts';
import { BarDive } from './bar-dive.ts';
import { BarMaster } from './bar-master.ts';
import type { BarsFound } from './bars-found.ts';
import { bestFit } from './best-fit.ts';
import { CoverTurns } from './cover-turns.ts';
import { RefillTurns } from './refill-turns.ts';
import { SwapTurns } from './swap-turns.ts';
import { TradeTurns } from './trade-turns.ts';

/** Work between two pauses, and of a turn of covers, dives or swaps. */
const PAUSE = 1_500_000;
const TURN = 6_000_000;
/** Work of swaps and of trades before the relaxation, and of refills after it, where swaps ended far from the bound. */
const SWAP_FIRST = 1.2e7;
const TRADE_FIRST = 1e7;
const REFILL_FIRST = 2e8;
/** Work of covers after the relaxation, before anything else is tried. */
const COVER_FIRST = 3e8;
/** Only where the bound leaves less than this share of a bar over: elsewhere the bound may be too low for refills. */
const TIGHT = 0.1;

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
 * whose value rounded up is the bound. Where that lies hardly above the value, covers come next, and where it leaves hardly
 * any waste, refills; covers, dives into the relaxation and swaps then take turns.
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
  const swaps = new SwapTurns(lengths, demand, room, chance, SWAP_FIRST);
  const refills = new RefillTurns(lengths, demand, room, chance);
  const trades = new TradeTurns(lengths, demand, room, chance);
  let covers: CoverTurns | undefined;
  const step = (dived: number): BarsStep => {
    const work = solved + swaps.work + trades.work + refills.work + (covers?.work ?? 0) + dived;
    return values ? { work, best, bound, values } : { work, best, bound };
  };
  yield step(0);
  const swapped = Math.min(SWAP_FIRST, effort / 4);
  const traded = trades.able(bound) ? Math.min(TRADE_FIRST, effort / 4) : 0;
  while (best.total > bound && (swaps.work < swapped || trades.work < traded)) {
    if (trades.work < traded) best = trades.turn(bound, PAUSE) ?? best;
    if (best.total > bound && swaps.work < swapped) best = swaps.turn(best, bound, PAUSE) ?? best;
    yield step(0);
  }
  if (best.total <= bound) return;

  const master = new BarMaster(lengths, demand, room);
  master.know(best.bars.map((b) => b.counts));
  master.know(swaps.bars());
  let sure = 0;
  while (!master.finished && step(0).work < effort) {
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

  covers = new CoverTurns(master, bound, chance);
  const covered = Math.min(COVER_FIRST, effort / 2);
  while (best.total > bound && !covers.done && covers.work < covered) {
    best = covers.turn(PAUSE) ?? best;
    yield step(0);
  }

  const over = bound * room - lengths.reduce((a, l, i) => a + l * demand[i]!, 0);
  const refilled = refills.able && over < TIGHT * room ? Math.min(REFILL_FIRST, effort / 4) : 0;
  while (best.total > bound + 1 && refills.work < refilled) {
    best = refills.turn(bound, PAUSE) ?? best;
    yield step(0);
  }

  const dive = new BarDive(master, best, chance);
  let diving = dive.run(bound);
  const swapFor = function* (work: number) {
    for (const until = swaps.work + work; best.total > bound && swaps.work < until; ) {
      const swapped = swaps.turn(best, bound, PAUSE);
      if (swapped) {
        best = dive.best = swapped;
        diving = dive.run(bound);
      }
      yield step(dive.work);
    }
  };
  while (best.total > bound && step(dive.work).work < effort) {
    for (
      const until = covers.work + TURN;
      best.total > bound && !covers.done && covers.work < until;
      yield step(dive.work)
    )
      best = covers.turn(PAUSE) ?? best;
    if (best.total <= bound) break;
    if (trades.able(bound)) {
      for (const until = trades.work + TURN; best.total > bound && trades.work < until; yield step(dive.work))
        best = trades.turn(bound, PAUSE) ?? best;
      if (best.total <= bound) break;
    }
    const from = dive.work;
    while (dive.work < from + TURN && !diving.next().done) if (dive.best.total < best.total) break;
    if (dive.best.total < best.total) best = dive.best;
    yield step(dive.work);
    yield* swapFor(Math.max(TURN, dive.work - from));
  }
  yield step(dive.work);
}
