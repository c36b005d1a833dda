import type { Solids } from '../solid/index.ts';
import type { Care } from './condition/condition.ts';
import type { PowerSaw } from './too-small.ts';

/** What the cards don't make but the shop has, and the modeller that stands for wood. */
export interface ShopAsItIs {
  /** What a saw takes away, in ticks, by tool id. */
  readonly kerfOf: (tool: string | undefined) => number;
  /** Which power saw a tool is, if it is one. */
  readonly sawOf: (tool: string | undefined) => PowerSaw | undefined;
  /** The screws there are, by id. */
  readonly screws: ReadonlyMap<string, { readonly length: number; readonly diameter: number }>;
  /** Plugs, dowels and biscuits there are, by id. */
  readonly fixings: ReadonlyMap<string, WoodenFixing>;
  /** How long glue and coats need, and how many coats were promised. */
  readonly care: Care;
  readonly solids: Solids;
}

/** What a wooden fixing measures, in ticks: a plug or dowel is as thick as it is wide. */
export interface WoodenFixing {
  readonly kind: 'plug' | 'dowel' | 'biscuit';
  readonly wide: number;
  readonly across: number;
  readonly thick: number;
}
