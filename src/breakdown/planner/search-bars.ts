import { Chance } from '../../measure/index.ts';
import type { BarsFound } from './bars-found.ts';
import { bestFit } from './best-fit.ts';
import { CoverTurns } from './cover-turns.ts';
import { DiveTurns } from './dive-turns.ts';
import { PatternMaster } from './pattern-master.ts';
import { RefillTurns } from './refill-turns.ts';
import { SwapTurns } from './swap-turns.ts';
import { TradeTurns } from './trade-turns.ts';

/** Work between two pauses, and of a turn of covers, dives or swaps. */
const PAUSE = 1_500_000;
const TURN = 6_000_000;
/** Work of swaps and of trades before the relaxation, in so many parts by turns; then of swaps for one bar more. */
const SWAP_FIRST = 1.2e7;
const TRADE_FIRST = 1e7;
const PARTS = 6;
const NEAR_FIRST = 6e6;
/** Where the bound leaves less than this share of a bar over, the relaxation would say no more: it waits so much work. */
const MOST_BARE = 0.0026;
const BARE_FIRST = 5e8;
/** Work of refills after the relaxation, where swaps ended far from the bound. */
const REFILL_FIRST = 2e8;
/** Work of covers before anything else is tried. */
const COVER_FIRST = 2e8;
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

/** A way to look for fewer bars that works for a while at a time. */
interface Way {
  readonly work: number;
  /** Nothing more can be found this way. */
  readonly done?: boolean;
  turn(work: number, best: BarsFound, bound: number): BarsFound | undefined;
}

/**
 * The fewest bars of one length. Laying in order of length comes first, then a short search by swaps and trades, then the
 * relaxation, whose value rounded up is the bound. Where that lies hardly above the value, covers come next, and where it
 * leaves hardly any waste, refills; covers, trades, dives into the relaxation and swaps then take turns. Where the
 * lengths alone say what the relaxation could, it waits until all else has been tried for long.
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
  const ways: Way[] = [];
  const way = <W extends Way>(w: W): W => {
    ways.push(w);
    return w;
  };
  const swaps = way(new SwapTurns(lengths, demand, room, chance, SWAP_FIRST));
  const trades = way(new TradeTurns(lengths, demand, room, chance));
  const step = (): BarsStep => {
    const work = solved + ways.reduce((a, w) => a + w.work, 0);
    return values ? { work, best, bound, values } : { work, best, bound };
  };
  const use = function* (w: Way, work: number) {
    for (const until = w.work + work; best.total > bound && !w.done && w.work < until; yield step())
      best = w.turn(PAUSE, best, bound) ?? best;
  };
  const trade = function* (work: number) {
    if (trades.able(bound)) yield* use(trades, work);
  };
  yield step();
  for (let part = 0; part < PARTS; part++) {
    yield* trade(Math.min(TRADE_FIRST, effort / 4) / PARTS);
    yield* use(swaps, Math.min(SWAP_FIRST, effort / 4) / PARTS);
  }
  // Where the bound may be out of reach, one bar more often isn't.
  if (best.total > bound + 1) yield* use(swaps, Math.min(NEAR_FIRST, effort / 8));
  if (best.total <= bound) return;

  const master = new PatternMaster(lengths, demand, room);
  const waste = bound * room - lengths.reduce((a, l, i) => a + l * demand[i]!, 0);
  let covers: CoverTurns | undefined;
  if (waste <= MOST_BARE * room) {
    covers = way(
      new CoverTurns(
        master,
        bound,
        chance,
        Float64Array.from(lengths, (l) => l / room),
      ),
    );
    yield* use(covers, Math.min(COVER_FIRST, effort / 2));
    for (
      const until = step().work + Math.min(BARE_FIRST, effort / 2);
      best.total > bound && step().work < until;
    ) {
      yield* trade(TURN);
      yield* use(swaps, TURN);
    }
    if (best.total <= bound) return;
  }

  master.know(best.bars.map((b) => b.counts));
  master.know(swaps.bars());
  let sure = 0;
  while (!master.finished && step().work < effort) {
    sure = Math.max(sure, master.solve(0, 60));
    solved = master.work;
    yield step();
    if (Math.ceil(sure - 1e-6) >= master.objective - 1e-6) break;
  }
  const shown = master.values(WORTH);
  const worth = shown.reduce((a, v, i) => a + v * demand[i]!, 0);
  const proven = Math.ceil(worth / WORTH - 1e-12);
  if (proven > bound) {
    bound = proven;
    values = shown;
  }

  if (!covers || values) {
    covers = way(new CoverTurns(master, bound, chance));
    yield* use(covers, Math.min(COVER_FIRST, effort / 2));
  }
  const over = bound * room - lengths.reduce((a, l, i) => a + l * demand[i]!, 0);
  if (best.total > bound + 1 && over < TIGHT * room) {
    const refills = way(new RefillTurns(lengths, demand, room, chance));
    if (refills.able) yield* use(refills, Math.min(REFILL_FIRST, effort / 4));
  }
  const dives = way(new DiveTurns(master, best, chance));
  while (best.total > bound && step().work < effort) {
    yield* use(covers, TURN);
    yield* trade(TURN);
    const from = dives.work;
    yield* use(dives, TURN);
    yield* use(swaps, Math.max(TURN, dives.work - from));
  }
  yield step();
}
