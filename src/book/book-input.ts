import type { Breakdown, LotBreakdown } from '../breakdown/index.ts';
import type { BuildPlan } from '../build/index.ts';
import type { LengthFormat, Ticks } from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { Paper } from './page-frame.ts';

/** Everything that a plan book tells. */
export interface BookInput {
  /** The piece's name. */
  readonly title: string;
  readonly subtitle?: string;
  readonly paper: Paper;
  readonly format: LengthFormat;
  readonly setOut: SetOut;
  readonly breakdown: BookBreakdown;
  readonly build: BuildPlan;
  /** Names of the tools that operations refer to. */
  readonly tools: readonly { readonly id: string; readonly name: string }[];
  /** How wide the guide rail is that sheets are sawn along; absent where there is none. */
  readonly railWidth?: Ticks;
  /** Names of the people who work on the piece. */
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly shopping: Shopping;
  /** Where the minutes on the cards come from, in a sentence. */
  readonly minutesFrom: string;
  /** What was proven of the plan, in a sentence each: `The dry fit ran 92 operations and found the piece as drawn.` */
  readonly proof: readonly string[];
  /** Safety for the whole job, in a sentence each. */
  readonly cautions: readonly string[];
  readonly snags: readonly Snag[];
}

/** What the book needs of a breakdown; a whole one fits. */
export interface BookBreakdown {
  readonly lots: readonly {
    readonly lot: Pick<LotBreakdown['lot'], 'id' | 'name' | 'form' | 'stock'>;
    readonly problem: Pick<LotBreakdown['problem'], 'kerf' | 'yard'>;
    readonly sheets: LotBreakdown['sheets'];
  }[];
  readonly missing: Breakdown['missing'];
  readonly spares: Breakdown['spares'];
}

/** What to buy and what to take from the rack, and what it all costs. */
export interface Shopping {
  /** Printed before amounts: `€`, `$`. */
  readonly currency: string;
  readonly buy: readonly ShoppingRow[];
  readonly rack: readonly RackRow[];
  /** What the cost is made of, in order. */
  readonly cost: readonly CostRow[];
}

export interface ShoppingRow {
  readonly what: string;
  readonly count: number;
  /** `sheet`, `box of 100`, `m`. */
  readonly unit?: string;
  /** Price of one, absent when it isn't known. */
  readonly each?: number;
  /** Where count and price come from: `price in the rack file; 2 sheets by the cutting plan`. */
  readonly from: string;
}

export interface RackRow {
  readonly what: string;
  /** What of it is used: `1 of 2`, `38 screws`. */
  readonly used: string;
  /** What goes back on the rack: `left over 1210 x 300`. */
  readonly left?: string;
}

export interface CostRow {
  readonly what: string;
  readonly amount: number;
  /** How the amount comes about: `2 sheets at 84.00`. */
  readonly from: string;
}
