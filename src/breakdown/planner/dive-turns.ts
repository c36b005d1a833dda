import type { Chance } from '../../measure/index.ts';
import { BarDive } from './bar-dive.ts';
import type { BarsFound } from './bars-found.ts';
import type { PatternMaster } from './pattern-master.ts';

/** Dives into a solved relaxation in turns; they begin anew whenever something else found better bars. */
export class DiveTurns {
  private readonly dive: BarDive;
  private diving: Generator<void> | undefined;

  constructor(master: PatternMaster, best: BarsFound, chance: Chance) {
    this.dive = new BarDive(master, best, chance);
  }

  get work(): number {
    return this.dive.work;
  }

  /** Works for a while; gives better bars if it found some. */
  turn(work: number, best: BarsFound, bound: number): BarsFound | undefined {
    const { dive } = this;
    if (best.total < dive.best.total) {
      dive.best = best;
      this.diving = undefined;
    }
    this.diving ??= dive.run(bound);
    for (const until = dive.work + work; dive.work < until && dive.best.total === best.total; )
      if (this.diving.next().done) break;
    return dive.best.total < best.total ? dive.best : undefined;
  }
}
