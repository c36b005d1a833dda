import type { Chance } from '../../measure/index.ts';
import type { BarsFound } from './bars-found.ts';
import { type CoverColumns, CoverListing } from './cover-columns.ts';
import { CoverSearch } from './cover-search.ts';
import type { PatternMaster } from './pattern-master.ts';
import { placeRest } from './place-rest.ts';

/**
 * The most fillings that attempts look among, by turns: few are quickly looked through, many may hold what few don't. Of
 * too many, those that fall short by the least are taken: they are listed for more and more of what may be lacking.
 */
const MOST_COLUMNS = [1500, 5000, 12000];
const FIRST_PART = 1 / 64;
const MORE = 1.25;
/** Where the target lies further above the relaxation, in bars, the fillings are too many to tell anything. */
const MOST_SPARE = 0.012;
/** Steps of the first attempts, and how many more each later round has: where one fails early, another finds soon. */
const FIRST_STEPS = 300;
const MORE_STEPS = 300;
/** More kinds, or bars, than this would take too long and too much room. */
const MOST_KINDS = 300;
const MOST_BARS = 400;
/** Kinds that are worth next to nothing are covered too where there are but few. */
const FEW_WORTHLESS = 12;
/** Covers that may leave no room for the pieces worth nothing, before all is given up. */
const MOST_REFUSED = 40;
/** A kind worth less than this is worth nothing. */
const NOTHING = 1e-7;

/**
 * Looks for as many bars as the relaxation says among the only fillings that a plan of so few can be made of: in the
 * worth of the relaxation's end, all its bars together fall short of being worth one each by no more than the target lies
 * above the relaxation, so none does by more (after the column enumeration of R. Baldacci, N. Christofides and A. Mingozzi,
 * Mathematical Programming 115, 2008). Where this is little, they are few.
 */
export class CoverTurns {
  /** Set when nothing more can be found. */
  done = false;
  private readonly master: PatternMaster;
  private readonly target: number;
  private readonly chance: Chance;
  private readonly worth: Float64Array | undefined;
  private search: CoverSearch | undefined;
  private run: Generator<void, readonly number[] | undefined> | undefined;
  private steps = 0;
  private attempts = 0;
  /** What to look among, in the order of `MOST_COLUMNS`; fewer where all there are have come before. */
  private lists: CoverColumns[] = [];
  private columns: CoverColumns | undefined;
  /** Whether the last list is of all fillings that may be used. */
  private complete = false;
  private spent = 0;
  private bars: Int32Array[] = [];
  /** Covers beside which the rest found no room. */
  private refused = 0;

  /** Takes these worths, which no filling exceeds a bar by, or else those of the relaxation’s end. */
  constructor(master: PatternMaster, target: number, chance: Chance, worth?: Float64Array) {
    this.master = master;
    this.target = target;
    this.chance = chance;
    this.done = master.m > MOST_KINDS || target > MOST_BARS;
    this.worth = worth;
  }

  get work(): number {
    return this.spent + (this.search?.work ?? 0);
  }

  /** Works for a while; gives the bars if it found them. */
  turn(work: number): BarsFound | undefined {
    const until = this.work + work;
    while (!this.done && this.work < until) {
      if (this.lists.length === 0) {
        this.solveOn();
        continue;
      }
      if (!this.run) this.attempt();
      const step = this.run!.next();
      this.steps--;
      if (step.done && step.value) {
        this.done = true;
        return { bars: this.bars.map((counts) => ({ counts, times: 1 })), total: this.bars.length };
      }
      // Looked through to the end, and nothing left out: there is none.
      if (step.done && this.complete && this.columns === this.lists.at(-1)) this.done = true;
      if (this.refused > MOST_REFUSED) this.done = true;
      if (step.done || this.steps < 0) this.run = undefined;
    }
    return undefined;
  }

  /** Brings the relaxation nearer to its end, and once there lists what to look among. */
  private solveOn(): void {
    const { master, target } = this;
    if (this.worth) {
      this.list(this.worth, target - this.worth.reduce((a, w, i) => a + w * master.wanted[i]!, 0));
      return;
    }
    const before = master.work;
    const enough = target - MOST_SPARE;
    master.finished = false;
    master.solve(enough, 60, true);
    this.spent += master.work - before;
    if (master.objective <= enough + 1e-6) this.done = true;
    else if (master.finished) this.list(master.worth, target - master.objective);
  }

  private attempt(): void {
    const round = Math.floor(this.attempts / this.lists.length);
    this.columns = this.lists[this.attempts++ % this.lists.length]!;
    this.steps = FIRST_STEPS + MORE_STEPS * round;
    this.spent = this.work;
    this.search = new CoverSearch(this.columns, this.master.wanted, this.target, this.chance, (picked) =>
      this.accept(picked),
    );
    this.run = this.search.run();
  }

  /**
   * Lists the fillings to look among, where all of them together may fall short of a bar each by `short`: of all kinds, or
   * else of those that are worth something.
   */
  private list(worth: Float64Array, short: number): void {
    const { lengths, wanted, room } = this.master;
    const spare = Math.max(0, short) + 1e-6 + 2e-7 * this.target;
    const all = [...lengths.keys()];
    const worthless = all.filter((i) => worth[i]! < NOTHING).length;
    const choices = [all, all.filter((i) => worth[i]! > spare)].filter(
      (kinds, n) => kinds.length > 0 && (n > 0 || worthless <= FEW_WORTHLESS),
    );
    for (const kinds of choices) {
      if (this.lists.length > 0) break;
      const listing = new CoverListing({ lengths, demand: wanted, room, worth }, Int32Array.from(kinds));
      let part = FIRST_PART;
      for (const most of MOST_COLUMNS) {
        let columns: CoverColumns | undefined;
        while (!this.complete) {
          const more = listing.within(part * spare, most);
          if (!more) break;
          columns = more;
          this.complete = part === 1;
          part = Math.min(1, part * MORE);
        }
        if (columns) this.lists.push(columns);
      }
      this.spent += listing.work;
    }
    this.done = this.lists.length === 0;
  }

  /** Whether the pieces that no filling holds find room beside them. */
  private accept(picked: readonly number[]): boolean {
    const { lengths, wanted, room } = this.master;
    const { kinds, columns } = this.columns!;
    const bars = picked.map((j) => {
      const counts = new Int32Array(lengths.length);
      for (let k = columns.start[j]!; k < columns.start[j + 1]!; k++)
        counts[kinds[columns.kind[k]!]!] = columns.times[k]!;
      return counts;
    });
    while (bars.length < this.target) bars.push(new Int32Array(lengths.length));
    const placed = placeRest(lengths, wanted, room, bars);
    this.spent += 2 * lengths.length * this.target;
    if (placed) this.bars = bars.filter((counts) => counts.some((c) => c > 0));
    else this.refused++;
    return placed;
  }
}
